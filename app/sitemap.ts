import type { MetadataRoute } from 'next'
import { headers } from 'next/headers'
import { content } from '#lib/content/index.ts'
import { PAGED_VOCABULARIES } from '#lib/content/pages.ts'
import { listCases } from '#lib/db/cases.ts'
import { listLibrary } from '#lib/db/library.ts'
import { LIBRARY_KINDS, type LibraryKind } from '#lib/db/projection/library.ts'
import { listRecipes } from '#lib/db/recipes.ts'
import { inLanguage } from './_words/language.ts'
import { LANGUAGES, type Language } from './_words/languages.ts'
import { CALCULATIONS } from './work-out/calculations.ts'

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
  '/rows',
  '/find',
  '/map',
  '/like',
  '/evidence',
  '/evidence/compare',
  '/evidence/method',
]

/** Every page that can be read, published entries only, in every language. */
export default async function sitemap(): Promise<MetadataRoute.Sitemap> {
  const asked = await headers()
  const base = `${asked.get('x-forwarded-proto') ?? 'http'}://${asked.get('host') ?? 'localhost'}`
  const { tables, sources, materials, guides, vocabularies } = content()
  const paths = [
    ...FIXED,
    ...Object.keys(CALCULATIONS).map((name) => `/work-out/${name}`),
    ...[...tables.keys()].map((id) => `/tables/${id}`),
    ...[...sources.keys()].map((id) => `/sources/${id}`),
    ...[...materials.keys()].map((id) => `/materials/${id}`),
    ...[...guides.keys()].map((id) => `/guides/${id}`),
    ...[...vocabularies.keys()].map((id) => `/terms/${id}`),
    ...PAGED_VOCABULARIES.flatMap((id) =>
      [...(vocabularies.get(id)?.keys() ?? [])].map((term) => `/terms/${id}/${term}`),
    ),
    ...(await every(recipesAfter)).map((slug) => `/recipes/${slug}`),
    ...(await every(casesAfter)).map((slug) => `/cases/${slug}`),
  ]
  for (const kind of LIBRARY_KINDS)
    paths.push(...(await every(libraryAfter(kind))).map((slug) => `/${kind}s/${slug}`))
  return paths.flatMap((path) => {
    const at = (language: Language) => `${base}${inLanguage(path || '/', language).replace(/^\/$/, '')}`
    const languages = Object.fromEntries(LANGUAGES.map((language) => [language, at(language)]))
    return LANGUAGES.map((language) => ({ url: at(language), alternates: { languages } }))
  })
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

const libraryAfter = (kind: LibraryKind) => async (after: string | undefined) => {
  const { entries, next } = await listLibrary(kind, { limit: MOST, after })
  return { slugs: entries.map(({ slug }) => slug), next }
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
