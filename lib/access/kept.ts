import { doorOfPath, type PageDoor } from './doors.ts'

/** Pages for anyone that are worth having on site without a signal. What is not named here is never kept. */
const READ: ReadonlySet<PageDoor> = new Set([
  '/',
  '/about',
  '/cases',
  '/cases/[slug]',
  '/cases/[slug]/photos',
  '/cautions',
  '/compare',
  '/glossary',
  '/guides',
  '/guides/[id]',
  '/materials',
  '/materials/[id]',
  '/method',
  '/recipes',
  '/recipes/[slug]',
  '/recipes/[slug]/job',
  '/record',
  '/record/sheet',
  '/rows',
  '/rows/[slug]',
  '/sources',
  '/sources/[id]',
  '/tables',
  '/tables/[id]',
  '/terms',
  '/terms/[id]',
  '/terms/[id]/[term]',
  '/work-out',
  '/work-out/carbon',
  '/work-out/compatibility',
  '/work-out/convert-ratio',
  '/work-out/cure',
  '/work-out/hydraulicity',
  '/work-out/lime-certificate',
  '/work-out/sample',
  '/work-out/sand',
  '/work-out/slaking',
  '/work-out/sieve',
  '/work-out/subsoil',
] satisfies PageDoor[])

/** The page of somebody's own that is kept, for them alone and until they sign out: what they write on site. */
const WRITTEN: ReadonlySet<PageDoor> = new Set(['/write/[draft]/[step]'] satisfies PageDoor[])

/** The blank forms that drafts are begun on with no signal, kept like what they write. */
const BLANK: ReadonlySet<PageDoor> = new Set(['/write/blank'] satisfies PageDoor[])

/** What a browser keeps a page as: one to read, a step of a draft, or a blank form. */
export type Keep = 'page' | 'draft' | 'blank'

/** Whether the page at an address may be kept by the browser that was shown it. */
export function keepOf(path: string): Keep | null {
  const door = doorOfPath(path)
  if (door === undefined) return null
  if (READ.has(door)) return 'page'
  if (BLANK.has(door)) return 'blank'
  return WRITTEN.has(door) ? 'draft' : null
}
