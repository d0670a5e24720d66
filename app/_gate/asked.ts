import type { NextRequest } from 'next/server'
import { actorOf, cameSecure, sessionOf } from '#lib/auth/current.ts'
import { splitLanguage } from '../_words/language.ts'
import type { Language } from '../_words/languages.ts'

/** What the gate asks of a request: its address without the language, which pages are told in a header. */
export type Asked = Pick<NextRequest, 'nextUrl' | 'cookies' | 'headers' | 'method'> & {
  readonly language: Language
}

export function askedOf({ nextUrl, cookies, headers, method }: NextRequest): Asked {
  const { language, path } = splitLanguage(nextUrl.pathname)
  const bare = nextUrl.clone()
  bare.pathname = path
  return { nextUrl: bare, cookies, headers, method, language }
}

/** Who asks, by the session that the request carries. */
export const actorBehind = async ({ cookies, headers }: Pick<NextRequest, 'cookies' | 'headers'>) =>
  actorOf(await sessionOf((name) => cookies.get(name)?.value, cameSecure(headers.get('x-forwarded-proto'))))

/** Whether every part of an address can be decoded. */
export const isReadable = (path: string): boolean => decodable(path) !== undefined

function decodable(text: string): string | undefined {
  try {
    return decodeURIComponent(text)
  } catch {
    return undefined
  }
}

/** A part of the address as the page will be given it; what cannot be decoded stands for itself. */
export const decoded = (part: string): string => decodable(part) ?? part
