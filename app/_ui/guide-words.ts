import { askedLanguage } from '#app/asked.ts'
import type { Guide, GuideWords } from '#lib/content/types.ts'

/** What a guide says in the language of the page. */
export function guideWords(guide: Guide): GuideWords {
  const language = askedLanguage()
  return language === 'en' ? guide : guide[language]
}
