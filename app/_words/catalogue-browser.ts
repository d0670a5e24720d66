import type { Messages } from './catalogue.ts'
import type { Language } from './languages.ts'

const messages = {} as Messages

/**
 * The words that a page brought along for its script, in its one language: a browser is not sent the whole catalogue.
 * `#app/catalogue.ts` in package.json names this file for browsers and catalogue.ts for all else.
 */
export const messagesOf = (_language: Language): Messages => messages
export type { Messages }

/** Puts in the words that the server sent with the page, before anything is drawn with them. */
export const provideWords = (words: Partial<Messages>): void => {
  Object.assign(messages, words)
}
