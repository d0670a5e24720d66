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
  'job-works':
    '/recipes/hot-lime-for-rubble/job?use=pointing-rubble&area=24&use-2=plaster&area-2=10&coat1-2=12&box=15&mixer=120',
  card: '/recipes/hot-lime-for-rubble/job/card?use=pointing-rubble&area=24&box=15&mixer=120',
  'card-none': '/recipes/hot-lime-for-rubble/job/card?use=pointing-rubble&area=wide',
  'job-us': '/recipes/hot-lime-for-rubble/job?show=fields&units=us',
  'work-out': '/work-out',
  find: '/find?q=kalkm%C3%B6rtel',
  'find-nothing': '/find?q=zyzzyva',
  'cases-narrowed': '/cases?q=lime&unit=limestone&unit=brick&minYears=2',
  'cases-none': '/cases?unit=rammed-earth&country=EE&country=Nowhere',
  map: '/map',
  'map-country': '/map?country=AU&use=pointing',
  like: '/like?unit=sandstone&use=pointing&frost=frequent&country=EE&salt=none',
  'like-nothing-said': '/like',
  stone: '/terms/units/limestone',
  cases: '/cases',
  'case-with-photos': '/cases/quollbrook-barn',
  'case-photos': '/cases/quollbrook-barn/photos',
  evidence: '/evidence',
  'evidence-few': '/evidence?recipe=cement-lime-one-one-six&end=joint-worse',
  'evidence-compare': '/evidence/compare?a=family%3Dair-lime&b=family%3Dhydraulic-lime&c=all&end=joint-worse',
  'evidence-method': '/evidence/method',
  compare: '/compare?use=pointing&state=lump-quicklime',
  guides: '/guides',
  guide: '/guides/quicklime-and-slaking',
  materials: '/materials',
  material: '/materials/lime-fat',
  glossary: '/glossary',
  terms: '/terms',
  'terms-of-joints': '/terms/joint-states',
  'terms-of-units': '/terms/units',
  cautions: '/cautions',
  tables: '/tables',
  table: '/tables/vitruvius-mortar',
  sources: '/sources',
  source: '/sources/britannica-11-brickwork',
  record: '/record',
  'record-sheet': '/record/sheet',
  rows: '/rows',
  method: '/method',
  about: '/about',
  kept: '/kept',
  versions: '/entries/hot-lime-for-rubble/versions',
  version: '/entries/hot-lime-for-rubble/versions/1',
  'versions-compared': '/entries/hot-lime-for-rubble/compare?from=1&to=2',
  'version-cited': '/entries/hot-lime-for-rubble/cite',
  adaptations: '/entries/hot-lime-for-rubble/adaptations',
  'sign-in': '/sign-in',
  'sign-up': '/sign-up',
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
