import en from '../_words/en/offline-note.json'
import es from '../_words/es/offline-note.json'
import type { Copy } from './copy.ts'
import { NOTE_ID } from './heads.ts'

type Word = keyof typeof en

/** What a note is written in: the language of the page that it stands on. */
const NOTES: Readonly<Record<string, typeof en>> = { en, es }

const wordsIn = (language: string) => NOTES[language.split('-')[0] ?? ''] ?? en

/** The language that a page says it is in. */
export const languageOf = (html: string): string => /<html[^>]* lang="([\w-]+)"/.exec(html)?.[1] ?? 'en'

/** Day and hour by the reader's own clock. */
export const dayAndTime = (at: Date, language: string): string =>
  new Intl.DateTimeFormat(language, { dateStyle: 'long', timeStyle: 'short' }).format(at)

interface Shown {
  /** What the gate said it is kept as. */
  readonly keep: string | null
  /** There is a signal, but the site is away. */
  readonly away: boolean
}

/** What there is to say above a kept copy, in sentences. */
export function sentencesOf(copy: Copy, { keep, away }: Shown, language: string): string[] {
  const t = (word: Word, date = '') => wordsIn(language)[word].replace('{date}', date)
  return [
    ...(copy.withdrawn ? [t('withdrawn')] : []),
    `${t(away ? 'away' : 'kept', dayAndTime(copy.keptAt, language))}${copy.old ? ` ${t('old')}` : ''}`,
    ...(keep === 'draft' || keep === 'blank' ? [t(keep)] : []),
  ]
}

/** What is said where nothing was kept. */
export const neverKept = (language: string): string[] => [wordsIn(language).never]

/** What is said over a copy whose entry was withdrawn. */
export const withdrawnSince = (language: string): string => wordsIn(language).withdrawn

/** What a note is about: a copy, a copy that must not be worked from, or that there is none. */
type NoteKind = 'kept' | 'withdrawn' | 'never'

/**
 * A page with a note above its main part, on screen and on paper. It stands directly in the body, where the framework's
 * script leaves alone what it does not know.
 */
export function withNote(html: string, kind: NoteKind, sentences: readonly string[]): string {
  const words = wordsIn(languageOf(html))
  const label = asText(kind === 'never' ? words.labelNever : words.label)
  const lines = sentences.map((sentence) => `<p>${asText(sentence)}</p>`).join('')
  const look = kind === 'withdrawn' ? 'withdrawn' : 'caution'
  const note = `<aside class="leaf" id="${NOTE_ID}" aria-label="${label}"><div class="notice notice-${look}"><p class="notice-label">${label}</p>${lines}</div></aside>`
  return html.replace(/<main[\s>]/, (main) => note + main)
}

const asText = (text: string) => text.replace(/[&<>"]/g, (one) => `&#${one.charCodeAt(0)};`)
