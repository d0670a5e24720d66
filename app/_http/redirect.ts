import { redirect as lead } from 'next/navigation'
import { askedLanguage } from '#app/asked.ts'
import { inLanguage } from '../_words/language.ts'
import type { Language } from '../_words/languages.ts'

/** Leads on to another page of this site, in the language of this one unless another is named. */
export function redirect(path: string, language: Language = askedLanguage()): never {
  lead(inLanguage(path, language))
}
