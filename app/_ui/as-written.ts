import { askedLanguage } from '#app/asked.ts'

/**
 * For an element with words that somebody wrote for the record, on a page that is not in English. An entry does not
 * say in which language it is written, so the page says that it is not known.
 */
export const asWritten = (): { lang?: '' } => (askedLanguage() === 'en' ? {} : { lang: '' })

/** For an element with words of content, which are English, on a page in another language. */
export const inEnglish = (): { lang?: 'en' } => (askedLanguage() === 'en' ? {} : { lang: 'en' })
