import { askedLanguage } from '#app/asked.ts'

/** For an element whose words stand as they were written, in English, on a page in another language. */
export const asWritten = (): { lang?: 'en' } => (askedLanguage() === 'en' ? {} : { lang: 'en' })
