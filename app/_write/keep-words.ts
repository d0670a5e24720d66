import { words } from '../_words/index.ts'

const NAMES = [
  'saving',
  'saved',
  'offline',
  'signedOut',
  'signIn',
  'both',
  'seeBoth',
  'elsewhere',
  'reload',
  'refused',
  'begun',
  'goOn',
  'gone',
  'beginWith',
  'found',
  'putIn',
  'drop',
  'sent',
  'waits',
  'wentUp',
  'seeSent',
  'where',
  'whereFailed',
] as const

/** Sentences of the script that saves, with holes for what it knows: the catalogue stays on the server. */
export type KeepWords = Readonly<Record<(typeof NAMES)[number], string>>

/** The words that the saving script says. */
export function keepWords(): KeepWords {
  const t = words('write')
  const holes = { time: '{time}', why: '{why}', at: '{at}' }
  return Object.fromEntries(NAMES.map((name) => [name, t(`keep.${name}`, holes)])) as KeepWords
}
