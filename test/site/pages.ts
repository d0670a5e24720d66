import { inject } from 'vitest'

export const SITE = inject('siteUrl')

/** One page of every kind, among them a hazard, an earlier revision, a refused form and a page that is not there. */
export const PAGES = {
  home: '/',
  recipes: '/recipes',
  'recipes-of-brick': '/recipes?unit=brick',
  recipe: '/recipes/hot-lime-for-rubble',
  'recipe-earlier': '/recipes/hot-lime-for-rubble?revision=1',
  'recipe-hazard': '/recipes/cement-render-over-earth',
  job: '/recipes/hot-lime-for-rubble/job',
  'job-hazard': '/recipes/cement-render-over-earth/job',
  'job-refused': '/recipes/hot-lime-for-rubble/job?use=pointing-rubble&area=wide&openings=1,500',
  'job-us': '/recipes/hot-lime-for-rubble/job?show=fields&units=us',
  'work-out': '/work-out',
  cases: '/cases',
  tables: '/tables',
  table: '/tables/vitruvius-mortar',
  sources: '/sources',
  source: '/sources/britannica-11-brickwork',
  record: '/record',
  method: '/method',
  about: '/about',
  'not-there': '/recipes/no-such-recipe',
} as const

/** Addresses whose entries are known only to a running site: the first case record. */
export async function firstCase(): Promise<string> {
  const { cases } = (await (await fetch(`${SITE}/api/v1/cases?limit=1`)).json()) as {
    cases: { slug: string }[]
  }
  const slug = cases[0]?.slug
  if (slug === undefined) throw new Error('the demo holds no case')
  return `/cases/${slug}`
}
