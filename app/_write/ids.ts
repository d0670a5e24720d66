import type { Typed } from '../_http/form.ts'

/** Longest id made from words unless said otherwise; the schema allows twice as much. */
const MOST = 40

/** Words as an id: `Façade nord, 2ᵉ étage` becomes `facade-nord-2e-etage`. Empty where no letter or digit is left. */
export const slugOf = (words: string, most = MOST): string =>
  words
    .normalize('NFKD')
    .replace(/\p{Diacritic}/gu, '')
    .toLowerCase()
    .replace(/[ß]/g, 'ss')
    .replace(/[æ]/g, 'ae')
    .replace(/[øœ]/g, 'o')
    .replace(/[đð]/g, 'd')
    .replace(/[ł]/g, 'l')
    .replace(/[^a-z0-9]+/g, '-')
    .slice(0, most)
    .replace(/^-+|-+$/g, '')

/** The fields of an item that can name it, the best first. */
const NAMING = ['title', 'where', 'location'] as const

/** An id for an item of a list that has none, unlike those taken. */
export function idFor(typed: Typed, item: string, taken: ReadonlySet<string>): string {
  const words = NAMING.map((key) => slugOf(typed[`${item}.${key}`] ?? '')).find((one) => one !== '')
  const base = words ?? 'part'
  for (let number = 1; ; number++) {
    const id = number === 1 ? base : `${base}-${number}`
    if (!taken.has(id)) return id
  }
}
