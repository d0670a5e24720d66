import { words } from '../_words/index.ts'

const NAMES = [
  'title',
  'at',
  'begun',
  'discarded',
  'wentUp',
  'open',
  'others',
  'drop',
  'dropText',
  'dropSure',
] as const

/** Words of the list of what was written on this device. */
export type BegunWords = Readonly<Record<(typeof NAMES)[number], string>>

/** The words that the list says, with holes for what it knows. */
export function begunWords(): BegunWords {
  const t = words('offline')
  const holes = { date: '{date}', title: '{title}' }
  return Object.fromEntries(NAMES.map((name) => [name, t(`begun.${name}`, holes)])) as BegunWords
}
