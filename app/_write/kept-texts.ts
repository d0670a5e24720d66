import { inLanguage } from '../_words/language.ts'
import { type About, blankPage, sentWith } from './about.ts'
import { type Answer, type Changes, sendChanges } from './send-changes.ts'

/** Text of a draft that a browser holds until the server has it. */
interface Stored {
  readonly at: string
  readonly changes: Changes
  readonly about?: About
}

/** Text that windows left in this browser before this one opened. */
export interface Found {
  /** When the last of it was typed. */
  readonly at: string
  readonly texts: readonly KeptText[]
}

/** What one window left, and where. */
export interface KeptText extends Stored {
  readonly place: string
}

/** Told to a form once the server has taken what stands in it, and nothing of that waits beside its field. */
export const TAKEN = 'putlog-taken'

const beginningOf = (draft: string) => `putlog-draft-${draft}`

/** A place in this browser for one form of a draft: no window writes over what another keeps. */
export const newPlace = (draft: string): string =>
  `${beginningOf(draft)}-${Math.random().toString(36).slice(2)}`

/**
 * Keeps in a place what the server does not have; nothing where there is nothing.
 *
 * @returns whether the place holds something now: a browser may refuse
 */
export function keepIn(place: string, changes: Changes, about?: About): boolean {
  const stored = { at: new Date().toISOString(), changes, ...(about && { about: inItsLanguage(about) }) }
  write(place, Object.keys(changes).length > 0 ? stored : null)
  return read(place) !== null
}

const inItsLanguage = (about: About): About => ({ ...about, page: inLanguage(about.page) })

/** What windows of this browser left of a draft that the server does not have; what it has is let go. */
export function findKept(draft: string, kept: Readonly<Record<string, string>>): Found | null {
  const all = placesOf(draft).flatMap((place) => {
    const stored = read(place)
    const changes = Object.entries(stored?.changes ?? {}).filter(
      ([name, { is }]) => is !== (kept[name] ?? ''),
    )
    const left = stored && changes.length > 0 ? { ...stored, changes: Object.fromEntries(changes) } : null
    write(place, left)
    return left === null ? [] : [{ place, ...left }]
  })
  const at = all
    .map((one) => one.at)
    .sort()
    .at(-1)
  return at === undefined ? null : { at, texts: all }
}

/** Where to see what was sent: `both` where some of it waits to be chosen; or what became of it instead. */
export type Put = { readonly kind: 'kept'; readonly to: string } | Exclude<Answer, { readonly kind: 'kept' }>

/**
 * Sends what was found, one window's after the other's, and lets go of what arrived. A draft that was begun in this
 * browser is begun on the site with it, under its key, so that sending twice makes one.
 */
export async function putIn(draft: string, step: string, { texts }: Found): Promise<Put> {
  let waiting = false
  for (const { place, changes, about } of texts) {
    const answer = await sendChanges(draft, { step, version: 0, changes, ...sentWith(about) })
    // Of text that does not say whose it is, the site can't tell whether its writer's draft is there.
    if (answer.kind === 'gone' && about) markDiscarded(draft)
    if (answer.kind !== 'kept') return answer
    // A window that is still open may have typed on meanwhile.
    if (isStill(place, changes)) write(place, null)
    waiting ||= answer.waiting
  }
  return { kind: 'kept', to: inLanguage(`/write/${draft}/${waiting ? 'both' : step}`).replace(/\/$/, '') }
}

/** Notes that the site has a draft no longer: its text stays here, and begins a new one only as its writer says so. */
function markDiscarded(draft: string): void {
  for (const { place, about, ...stored } of textsHere(draft)?.texts ?? [])
    if (about) write(place, { ...stored, about: asDiscarded(about, draft) })
}

/** Whether the site has the draft no longer, and its writer has yet to say that another is to begin with its text. */
export const isDiscarded = ({ texts }: Found): boolean =>
  texts.some(({ about }) => about?.state === 'discarded')

/** The writer of a draft that was discarded says that another is to begin with its text. */
export function beginAnew(draft: string): void {
  for (const { place, about, ...stored } of textsHere(draft)?.texts ?? [])
    if (about?.state === 'discarded') write(place, { ...stored, about: { ...about, state: 'begun' } })
}

/** The same draft once the site has it no longer. */
export const asDiscarded = (about: About, draft: string): About =>
  inItsLanguage({ ...about, state: 'discarded', page: blankPage(about.asked, draft) })

/**
 * Lets go of what one window left where a later one holds all of it: a form that was opened again has taken it in, and
 * types on from there.
 */
export function letGoOfCovered(draft: string): void {
  const texts = textsHere(draft)?.texts ?? []
  texts.forEach(({ place, changes }, at) => {
    const isCovered = texts
      .slice(at + 1)
      .some((later) => Object.entries(changes).every(([name, { is }]) => later.changes[name]?.is === is))
    if (isCovered) write(place, null)
  })
}

export const letGo = ({ texts }: Found): void => {
  for (const { place } of texts) write(place, null)
}

/** What is left of it: a window that is still open lets go of its own once the server has it. */
export function stillKept({ at, texts }: Found): Found | null {
  const left = texts.filter(({ place }) => read(place) !== null)
  return left.length === 0 ? null : { at, texts: left }
}

/** Tells when another window let go of what it held of a draft. */
export function onLetGo(draft: string, told: () => void): () => void {
  const listen = ({ key, newValue }: StorageEvent) => {
    if (newValue === null && key?.startsWith(beginningOf(draft))) told()
  }
  window.addEventListener('storage', listen)
  return () => window.removeEventListener('storage', listen)
}

/** Drafts that this browser holds text of. */
export const draftsHere = (): string[] => [
  ...new Set(placesOf('').flatMap((place) => /^putlog-draft-([0-9a-f-]{36})-/.exec(place)?.[1] ?? [])),
]

/** All that this browser holds of a draft, whatever the server has; what was typed last stands last. */
export function textsHere(draft: string): Found | null {
  const texts = placesOf(draft)
    .flatMap((place) => {
      const stored = read(place)
      return stored === null ? [] : [{ place, ...stored }]
    })
    .sort((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : 0))
  return texts.length === 0 ? null : { at: texts.at(-1)?.at ?? '', texts }
}

function placesOf(draft: string): string[] {
  try {
    return Object.keys(localStorage).filter((place) => place.startsWith(beginningOf(draft)))
  } catch {
    return []
  }
}

/** Whether a place holds these changes and no others. */
const isStill = (place: string, changes: Changes): boolean =>
  JSON.stringify(read(place)?.changes) === JSON.stringify(changes)

/** Browsers may refuse storage; then only the server keeps. */
function read(place: string): Stored | null {
  try {
    return JSON.parse(localStorage.getItem(place) ?? 'null') as Stored | null
  } catch {
    return null
  }
}

function write(place: string, stored: Stored | null): void {
  try {
    if (stored === null) localStorage.removeItem(place)
    else localStorage.setItem(place, JSON.stringify(stored))
  } catch {
    // Full or forbidden.
  }
}
