import type { MetadataRoute } from 'next'
import { headers } from 'next/headers'
import { content } from '#lib/content/index.ts'
import { listCases } from '#lib/db/cases.ts'
import { listRecipes } from '#lib/db/recipes.ts'

const FIXED = [
  '',
  '/recipes',
  '/cases',
  '/tables',
  '/sources',
  '/work-out',
  '/record',
  '/method',
  '/about',
  '/guides',
  '/glossary',
  '/materials',
  '/cautions',
  '/terms',
  '/compare',
]

/** Every page that can be read, published entries only. */
export default async function sitemap(): Promise<MetadataRoute.Sitemap> {
  const asked = await headers()
  const base = `${asked.get('x-forwarded-proto') ?? 'http'}://${asked.get('host') ?? 'localhost'}`
  const { tables, sources, materials, guides, vocabularies } = content()
  const paths = [
    ...FIXED,
    ...[...tables.keys()].map((id) => `/tables/${id}`),
    ...[...sources.keys()].map((id) => `/sources/${id}`),
    ...[...materials.keys()].map((id) => `/materials/${id}`),
    ...[...guides.keys()].map((id) => `/guides/${id}`),
    ...[...vocabularies.keys()].map((id) => `/terms/${id}`),
    ...(await every(recipesAfter)).map((slug) => `/recipes/${slug}`),
    ...(await every(casesAfter)).map((slug) => `/cases/${slug}`),
  ]
  return paths.map((path) => ({ url: `${base}${path}` }))
}

const MOST = 100

const recipesAfter = async (after: string | undefined) => {
  const { recipes, next } = await listRecipes({}, { limit: MOST, after })
  return { slugs: recipes.map(({ slug }) => slug), next }
}

const casesAfter = async (after: string | undefined) => {
  const { cases, next } = await listCases({}, { limit: MOST, after })
  return { slugs: cases.map(({ slug }) => slug), next }
}

async function every(
  pageAfter: (after: string | undefined) => Promise<{ slugs: string[]; next: string | null }>,
): Promise<string[]> {
  const slugs: string[] = []
  for (let after: string | undefined; ; ) {
    const page = await pageAfter(after)
    slugs.push(...page.slugs)
    if (page.next === null) return slugs
    after = page.next
  }
}
