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
    ...(await listRecipes()).map(({ slug }) => `/recipes/${slug}`),
    ...(await everyCase()).map((slug) => `/cases/${slug}`),
  ]
  return paths.map((path) => ({ url: `${base}${path}` }))
}

async function everyCase(): Promise<string[]> {
  const slugs: string[] = []
  for (let after: string | undefined; ; ) {
    const page = await listCases({}, { limit: 100, ...(after && { after }) })
    slugs.push(...page.cases.map(({ slug }) => slug))
    if (page.next === null) return slugs
    after = page.next
  }
}
