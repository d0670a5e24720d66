import { askedLanguage } from '#app/asked.ts'
import english from '../_words/en/refused.json'
import { words } from '../_words/index.ts'

type Refused = keyof typeof english

/** Each sentence with what stands in its holes. */
const SENTENCES = (Object.entries(english) as [Refused, string][]).map(([key, sentence]) => {
  const escaped = sentence.replaceAll(/[.*+?^$()|[\]\\]/g, '\\$&')
  return [key, new RegExp(`^${escaped.replaceAll(/\{(\w+)\}/g, '(?<$1>.+)')}$`)] as const
})

/**
 * What a refusal says, in the language that is spoken now. `lib` says it in English; a sentence that the catalogue does
 * not have stays as it is.
 */
export function refusalSentence(message: string): string {
  if (askedLanguage() === 'en') return message
  for (const [key, pattern] of SENTENCES) {
    const found = pattern.exec(message)
    if (found) return words('refused')(key, { ...found.groups })
  }
  return message
}
