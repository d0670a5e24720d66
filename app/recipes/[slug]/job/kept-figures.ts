import type { Language } from '../../../_words/languages.ts'

/** Figures as this browser keeps them, by field name, each with the units (see {@link unitsTyped}) it was typed in. */
export type KeptFigures = Readonly<Record<string, { readonly text: string; readonly units: string }>>

const KEY = 'putlog:own-figures'
const LONGEST = 100

/** How figures are typed on a page: its units, and beside English its language, in which `1,500` is another number. */
export const unitsTyped = (system: string, language: Language): string =>
  language === 'en' ? system : `${system} ${language}`

/** What is kept; nothing where the browser keeps nothing or holds something that we did not write. */
export function keptFigures(store: Pick<Storage, 'getItem'>): KeptFigures {
  try {
    const held: unknown = JSON.parse(store.getItem(KEY) ?? '{}')
    if (typeof held !== 'object' || held === null) return {}
    return Object.fromEntries(
      Object.entries(held as Record<string, unknown>).flatMap(([name, value]) => {
        const { text, units } = (value ?? {}) as { text?: unknown; units?: unknown }
        const sound =
          typeof text === 'string' && text !== '' && text.length <= LONGEST && typeof units === 'string'
        return sound ? [[name, { text, units }]] : []
      }),
    )
  } catch {
    return {}
  }
}

/** Keeps what is typed beside what is kept of other materials. Says whether it could. */
export function keepFigures(
  store: Pick<Storage, 'getItem' | 'setItem'>,
  typed: Readonly<Record<string, string>>,
  units: string,
): boolean {
  const news = Object.entries(typed).map(([name, text]) => [name, { text: text.slice(0, LONGEST), units }])
  try {
    store.setItem(KEY, JSON.stringify({ ...keptFigures(store), ...Object.fromEntries(news) }))
    return true
  } catch {
    return false
  }
}

/** Forgets all that is kept, of these materials and of others. */
export function forgetFigures(store: Pick<Storage, 'removeItem'>): boolean {
  try {
    store.removeItem(KEY)
    return true
  } catch {
    return false
  }
}
