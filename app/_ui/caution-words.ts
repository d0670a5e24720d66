import { askedLanguage } from '#app/asked.ts'
import type { Caution, CautionWords } from '#lib/content/types.ts'

/** What a caution says, in the language spoken now. */
export function cautionWords(caution: Caution): CautionWords {
  const language = askedLanguage()
  return language === 'en' ? caution : caution[language]
}
