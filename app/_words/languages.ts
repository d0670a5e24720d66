/** The languages of the site; the first stands at the root of the addresses, each other one under its tag. */
export const LANGUAGES = ['en', 'es'] as const
export type Language = (typeof LANGUAGES)[number]

/** What each language calls itself. */
export const OWN_NAMES: Record<Language, string> = { en: 'English', es: 'Español' }

export const isLanguage = (text: string): text is Language => LANGUAGES.some((one) => one === text)

/**
 * The header by which the gate tells pages the language of the address. A browser's own counts only where a draft is
 * saved and where photos pass by the gate: it chooses words for whoever sent it, and nothing else.
 */
export const LANGUAGE_HEADER = 'x-putlog-language'

/** The header by which the gate tells the shell the address that was asked for, with its query. */
export const ADDRESS_HEADER = 'x-putlog-address'
