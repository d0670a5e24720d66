import { english, type Messages } from './en.ts'
import { spanish } from './es.ts'
import type { Language } from './languages.ts'

export type { Messages }

const CATALOGUES: Record<Language, Messages> = { en: english, es: spanish }

/** All words of a language. */
export const messagesOf = (language: Language): Messages => CATALOGUES[language]

/** In a browser the words come with the page; here they are all at hand. */
export const provideWords = (_words: Partial<Messages>): void => {}
