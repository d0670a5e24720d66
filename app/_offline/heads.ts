import type { Actor } from '#lib/access/actor.ts'

/** Headers by which the gate tells the worker what it may keep, and by which the worker marks what it kept. */
export const HEADS = {
  /** Who the page was drawn for: {@link GUEST_READER}, or the key of a member. */
  reader: 'Putlog-Reader',
  /** `page`, `draft` or `blank`: that it may be kept. */
  keep: 'Putlog-Keep',
  /** When the copy was kept, in milliseconds. */
  at: 'Putlog-Kept-At',
  /** The build whose worker kept it: its files stay as long as it does. */
  build: 'Putlog-Build',
  /** The page's title, as a part of an address is written. */
  title: 'Putlog-Title',
  /** Set where the entry was withdrawn since. */
  withdrawn: 'Putlog-Withdrawn',
} as const

/** Id of the note that stands on a kept copy, and on no other page. */
export const NOTE_ID = 'kept-copy'

export const GUEST_READER = 'guest'

/** The reader that an answer names: one for all guests, and one for each member. */
export const readerOf = (actor: Actor): string => (actor.kind === 'member' ? actor.key : GUEST_READER)

const PAGES = 'putlog-pages-'
const BLANKS = 'putlog-blanks-'
const PHOTOS = 'putlog-photos-'
const FILES = 'putlog-files-'

/** Names of the stores of a browser: what was drawn for one person is never among what was drawn for another. */
export const storeOf = {
  pages: (reader: string) => PAGES + reader,
  blanks: (reader: string) => BLANKS + reader,
  photos: (reader: string) => PHOTOS + reader,
  files: (build: string) => FILES + build,
} as const

/** Stores that hold what was drawn for anybody but this reader and guests. */
export const storesOfOthers = (names: readonly string[], reader: string): string[] =>
  names.filter((name) =>
    [PAGES, BLANKS, PHOTOS].some(
      (kind) => name.startsWith(kind) && name !== kind + GUEST_READER && name !== kind + reader,
    ),
  )

export const isPageStore = (name: string): boolean => name.startsWith(PAGES)

export const isBlankStore = (name: string): boolean => name.startsWith(BLANKS)

/** Stores of what was opened and kept ahead: pages, the photos on them, and blank forms. */
export const isOpenedStore = (name: string): boolean =>
  isPageStore(name) || isBlankStore(name) || name.startsWith(PHOTOS)

/** Where it is noted whose browser this is just now. */
export const READER_PLACE = { store: 'putlog-reader', address: '/reader' } as const

/** Stores of files of builds that no kept page is of. */
export const staleFileStores = (names: readonly string[], builds: ReadonlySet<string>): string[] =>
  names.filter((name) => name.startsWith(FILES) && !builds.has(name.slice(FILES.length)))
