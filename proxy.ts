import { type NextRequest, NextResponse } from 'next/server'
import { keepOf } from '#lib/access/kept.ts'
import { type Asked, actorBehind, askedOf, isReadable } from './app/_gate/asked.ts'
import { doorOf, sendToSignIn } from './app/_gate/door.ts'
import { STATUS, stateOf } from './app/_gate/state.ts'
import { RETRY_S, refusalPage, waitingPage } from './app/_http/plain-page.ts'
import { answerProblem, problemOf } from './app/_http/problem.ts'
import {
  contentSecurityPolicy,
  MAX_ADDRESS,
  MAX_BODY,
  makeNonce,
  securityHeaders,
} from './app/_http/security.ts'
import { HEADS, readerOf } from './app/_offline/heads.ts'
import { words } from './app/_words/index.ts'
import { ADDRESS_HEADER, LANGUAGE_HEADER, type Language } from './app/_words/languages.ts'

/** Addresses that answer without the database: they say how things stand, or only compute. */
const STANDS_ALONE =
  /^\/(?:api\/health|api\/v1\/openapi\.json|api\/v1\/sums\/.*|icon\.svg|icons\/.*|favicon\.ico|robots\.txt|manifest\.webmanifest|worker\.js)$/

/** Where a photo may be taken, and a place read from the device, when its owner asks for it. */
const WRITES = /^\/write(?:\/|$)/

/** What a page's script sends is answered in the language of the page, which the address does not name. */
const SAYS_LANGUAGE = /^\/api\/(?:drafts\/|v1\/photos$)/

/**
 * The gate before every page and every JSON answer: bounds what may come in, takes the language out of the address,
 * answers 503 while the database is away (a page can't), and sets the headers that keep the browser to our own files.
 */
export async function proxy(request: NextRequest): Promise<Response> {
  const asked = askedOf(request)
  const { nextUrl, language } = asked
  const path = nextUrl.pathname
  const secure = request.headers.get('x-forwarded-proto') === 'https'
  const headers = securityHeaders(secure, WRITES.test(path) ? ['camera', 'geolocation'] : [])
  const api = path.startsWith('/api/')

  const excess = excessOf(request, language)
  if (excess)
    return api
      ? answerProblem(problemOf(excess.status, excess.words), headers)
      : refusalPage(excess.status, excess.words, secure, language)
  const state = STANDS_ALONE.test(path) ? 'open' : await stateOf(asked)
  if (state === 'away') return away(api, secure, language)
  const inward = new Headers(request.headers)
  if (api) {
    if (!SAYS_LANGUAGE.test(path)) inward.delete(LANGUAGE_HEADER)
    return NextResponse.next({ request: { headers: inward }, headers })
  }
  const entry = await doorOf(asked)
  if (entry === 'sign-in') return sendToSignIn(asked, headers)

  const policy = contentSecurityPolicy(makeNonce(), process.env.NODE_ENV === 'development', secure)
  inward.set('Content-Security-Policy', policy)
  inward.set(LANGUAGE_HEADER, language)
  inward.set(ADDRESS_HEADER, `${path}${nextUrl.search}`)
  const answer = {
    request: { headers: inward },
    headers: { ...headers, ...(await keepHeaders(asked)), 'Content-Security-Policy': policy },
  }
  // The framework fails over an address that it cannot decode; at this one nothing is, and it says so.
  if (!isReadable(path)) return NextResponse.rewrite(new URL('/-', nextUrl), { ...answer, status: 404 })
  return NextResponse.next({ ...answer, status: entry === 'refused' ? 403 : STATUS[state] })
}

/** Tells the browser's worker who a page was drawn for, and whether it may be kept to be shown without a signal. */
async function keepHeaders(request: Asked): Promise<Record<string, string>> {
  // A file is drawn for nobody, and is answered also while nobody can say who asks.
  if (STANDS_ALONE.test(request.nextUrl.pathname)) return {}
  const keep = keepOf(request.nextUrl.pathname)
  return {
    [HEADS.reader]: readerOf(await actorBehind(request)),
    ...(keep !== null && { [HEADS.keep]: keep }),
  }
}

function away(api: boolean, secure: boolean, language: Language): Response {
  if (!api) return waitingPage(secure, language)
  return answerProblem(problemOf(503, words('faults', language)('unavailable.lead')), {
    ...securityHeaders(secure),
    'Retry-After': String(RETRY_S),
  })
}

function excessOf(request: NextRequest, language: Language): { status: number; words: string } | undefined {
  const t = words('faults', language)
  if (request.url.length > MAX_ADDRESS)
    return { status: 414, words: t('request.address', { limit: MAX_ADDRESS }) }
  if (Number(request.headers.get('content-length') ?? 0) > MAX_BODY)
    return { status: 413, words: t('request.too-large', { limit: MAX_BODY }) }
  return undefined
}

// Bodies of photos pass by: the gate would hold each in memory, twice, before its route saw a byte. Those routes bound
// what they read, set the same headers and answer 503 by themselves.
export const config = {
  matcher: '/((?!_next/static|_next/image|api/v1/photos/[0-9a-f-]+$|photos/add$).*)',
}
