import { askedLanguage } from '#app/asked.ts'
import { isLanguage, type Language } from './languages.ts'

/** The tags that pages, numbers and dates carry; they follow the address, never the server's own settings. */
const LOCALES: Record<Language, string> = { en: 'en-GB', es: 'es' }

/** The tag of the language that is spoken now. */
export const locale = (language: Language = askedLanguage()): string => LOCALES[language]

/** What is made once for each language, at the first need: formatters cost more to make than to use. */
export function eachLanguage<T>(make: (language: Language) => T): () => T {
  const made = new Map<Language, T>()
  return () => {
    const language = askedLanguage()
    if (!made.has(language)) made.set(language, make(language))
    return made.get(language) as T
  }
}

/** Addresses that are the same in every language: files, and what programs ask. */
const ONE_FOR_ALL = /^\/(?:\/|\\|api\/|_next\/|photos\/(?:add(?:$|\?)|[0-9a-f]{64}\/)|icon\.svg)/

/**
 * An address of this site in the language that is spoken now: `/recipes` is `/es/recipes` on a Spanish page. English
 * stands at the root. Addresses of other sites, files and what has its language already stay as they are.
 */
export function inLanguage(address: string, language: Language = askedLanguage()): string {
  if (language === 'en' || !address.startsWith('/') || ONE_FOR_ALL.test(address)) return address
  const [, path = '', rest = ''] = /^([^?#]*)(.*)$/s.exec(address) ?? []
  if (isLanguage(path.split('/')[1] ?? '')) return address
  return `/${language}${path === '/' ? '' : path}${rest}`
}

/** A whole link to this site, as mail needs it, that leads to its page in the language spoken now. */
export function linkInLanguage(link: string): string {
  const { origin, pathname, search, hash } = new URL(link)
  return `${origin}${inLanguage(`${pathname}${search}${hash}`)}`
}

/** The path of an address without its language, and that language; in capitals too, as the framework leads them there. */
export function splitLanguage(path: string): { language: Language; path: string } {
  const [, tag = '', ...rest] = path.split('/')
  const first = tag.toLowerCase()
  const bare = `/${rest.join('/')}`
  if (first === 'en' || !isLanguage(first) || ONE_FOR_ALL.test(bare)) return { language: 'en', path }
  return { language: first, path: bare }
}

/**
 * The same address, with its query, in another language; without the digest of what a sheet printed, since it prints
 * otherwise there, and with figures that are asked about here written so that they mean the same there.
 */
export function switched(address: string, to: Language): string {
  const [, path = '', query = '', hash = ''] = /^([^?#]*)(\?[^#]*)?(.*)$/s.exec(address) ?? []
  const from = splitLanguage(path)
  const parts = query
    .slice(1)
    .split('&')
    .filter((part) => part !== '' && !part.startsWith('is='))
  const kept = from.language === to ? parts : settled(parts, from.language)
  return `${inLanguage(from.path, to)}${kept.length > 0 ? `?${kept.join('&')}` : ''}${hash}`
}

/** Figures that a language asks about (`1,500` in English), by what stands before, in and behind them. */
const ASKED: Record<Language, RegExp> = {
  en: /(^|[^\d.,])([1-9]\d{0,2}),(\d{3})(?![\d.,])/g,
  es: /(^|[^\d.,])([1-9]\d{0,2})\.(\d{3})(?![\d.,])/g,
}

/** Parts of a query with what was chosen of thousands put into their figures: elsewhere the same sign is a decimal one. */
function settled(parts: readonly string[], from: Language): string[] {
  const thousands = new Set(parts.flatMap((part) => /^([^=]+)-mark=thousands$/.exec(part)?.[1] ?? []))
  return parts
    .filter((part) => !/^[^=]+-mark=/.test(part))
    .map((part) => {
      const [name = ''] = part.split('=')
      const text = new URLSearchParams(part).get(name)
      if (!thousands.has(name) || text === null) return part
      return `${new URLSearchParams({ [name]: text.replace(ASKED[from], '$1$2$3') })}`
    })
}
