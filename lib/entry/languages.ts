/** The languages that the site speaks; the first stands where nobody asked for another. */
export const LANGUAGES = ['en', 'es'] as const
export type Language = (typeof LANGUAGES)[number]

export const isLanguage = (text: string): text is Language => LANGUAGES.some((one) => one === text)
