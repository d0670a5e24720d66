import { AsyncLocalStorage } from 'node:async_hooks'
import { workUnitAsyncStorage } from 'next/dist/server/app-render/work-unit-async-storage.external.js'
import { isLanguage, LANGUAGE_HEADER, type Language } from './languages.ts'

const told = new AsyncLocalStorage<Language>()

/** Speaks a language until this is done, whatever a request says: in mail, in files for one reader, and in tests. */
export const speaking = <T>(language: Language, act: () => T): T => told.run(language, act)

/**
 * The language of the request that is being answered. Words are asked for in the middle of everything, so this can't
 * wait as `headers()` does: it reads the framework's own store of the request, which `headers()` hands out too.
 * `#app/asked.ts` in package.json names this file; for browsers it names asked-browser.ts.
 *
 * @throws Error when a page's words are asked for while its file loads: the language is not known then, and the first
 *   visitor's would be everybody's. Ask inside a function; a page's title goes into `generateMetadata`.
 */
export function askedLanguage(): Language {
  const spoken = told.getStore()
  if (spoken !== undefined) return spoken
  const asked = workUnitAsyncStorage.getStore()
  if (asked?.type === 'request') {
    const language = asked.headers.get(LANGUAGE_HEADER) ?? ''
    return isLanguage(language) ? language : 'en'
  }
  if (process.env.NEXT_RUNTIME === undefined) return 'en'
  throw new Error('Words were asked for outside a request, so their language is not known')
}
