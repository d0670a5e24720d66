import type { Metadata } from 'next'
import { inLanguage } from '../_words/language.ts'
import { LANGUAGES } from '../_words/languages.ts'

/** Where a page stands in the language it is read in, and where in every other. */
export const alternates = (path: string): NonNullable<Metadata['alternates']> => ({
  canonical: inLanguage(path),
  languages: Object.fromEntries(LANGUAGES.map((language) => [language, inLanguage(path, language)])),
})
