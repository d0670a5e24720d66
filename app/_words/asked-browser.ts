import { isLanguage, type Language } from './languages.ts'

/** The language of the page that a script runs on. */
export function askedLanguage(): Language {
  const [language = ''] = document.documentElement.lang.split('-')
  return isLanguage(language) ? language : 'en'
}
