import type { Language } from '#lib/entry/languages.ts'

/** The first stands at the root of the addresses, each other one under its tag. */
export { isLanguage, LANGUAGES, type Language } from '#lib/entry/languages.ts'

/** What each language calls itself. */
export const OWN_NAMES: Record<Language, string> = { en: 'English', es: 'Español' }

/**
 * The header by which the gate tells pages the language of the address. A browser's own counts only where a page's
 * script saves a draft or sends a photo: it chooses words for whoever sent it, and nothing else.
 */
export const LANGUAGE_HEADER = 'x-putlog-language'

/** The header by which the gate tells the shell the address that was asked for, with its query. */
export const ADDRESS_HEADER = 'x-putlog-address'
