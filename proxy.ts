import { type NextRequest, NextResponse } from 'next/server'
import { GUEST } from '#lib/access/actor.ts'
import { mayPass, ruleOfPath } from '#lib/access/doors.ts'
import { keepOf } from '#lib/access/kept.ts'
import { actorOf, cameSecure, sessionOf } from '#lib/auth/current.ts'
import { type ContentPage, hasContentPage, hasTermPage } from '#lib/content/pages.ts'
import { addressState } from '#lib/db/entries.ts'
import { ping } from '#lib/db/health.ts'
import { keepsSheet } from '#lib/db/kept-sheets.ts'
import { isOnDesk } from '#lib/db/review.ts'
import { entryHead } from '#lib/db/versions.ts'
import type { WrittenKind } from '#lib/entry/body.ts'
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
import { wholeNumber } from './app/_ui/query.ts'
import { words } from './app/_words/index.ts'
import { inLanguage, splitLanguage } from './app/_words/language.ts'
import { ADDRESS_HEADER, LANGUAGE_HEADER, type Language } from './app/_words/languages.ts'

/** Addresses that answer without the database: they say how things stand, or only compute. */
const STANDS_ALONE =
  /^\/(?:api\/health|api\/v1\/openapi\.json|api\/v1\/sums\/.*|icon\.svg|icons\/.*|favicon\.ico|robots\.txt|manifest\.webmanifest|worker\.js)$/

const ENTRY_PAGE = /^\/(recipe|case|material|source|row)s\/([^/]+)(?:\/photos|(\/job))?$/

/** Where a photo may be taken, and a place read from the device, when its owner asks for it. */
const WRITES = /^\/write(?:\/|$)/

const CONTENT_PAGE = /^\/(tables|guides|terms)\/([^/]+)$/

const TERM_PAGE = /^\/terms\/([^/]+)\/([^/]+)$/

/** Pages about an entry's versions; the numbers of versions stand in the address too. */
const VERSIONS_PAGE = /^\/entries\/([^/]+)\/(versions|compare|cite|adaptations)(?:\/([^/]+))?$/

const DESK_PAGE = /^\/review\/([^/]+)$/

const SHEET_PAGE = /^\/account\/sheets\/(?!new$)([^/]+)$/

const STATUS = { open: 200, gone: 410, absent: 404 } as const

/** How long a page waits for a database that neither answers nor refuses; a busy machine is not an absent one. */
const PATIENCE_MS = 5000

/** What the gate asks of a request: its address without the language, which pages are told in a header. */
type Asked = Pick<NextRequest, 'nextUrl' | 'cookies' | 'headers' | 'method'> & { readonly language: Language }

function askedOf({ nextUrl, cookies, headers, method }: NextRequest): Asked {
  const { language, path } = splitLanguage(nextUrl.pathname)
  const bare = nextUrl.clone()
  bare.pathname = path
  return { nextUrl: bare, cookies, headers, method, language }
}

/** What saves a draft as it is typed answers in the language of its page, which the address does not name. */
const SAYS_LANGUAGE = /^\/api\/drafts\//

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

/** Whether whoever asks may pass the page's door. What a guest sends in a form goes on: the action answers, and keeps
 * what was typed. */
async function doorOf({ nextUrl, cookies, headers, method }: Asked): Promise<'open' | 'refused' | 'sign-in'> {
  const rule = ruleOfPath(nextUrl.pathname)
  if (mayPass(GUEST, rule)) return 'open'
  const actor = await actorBehind({ cookies, headers })
  if (mayPass(actor, rule)) return 'open'
  if (actor.kind !== 'guest') return 'refused'
  return method === 'GET' || method === 'HEAD' ? 'sign-in' : 'open'
}

const actorBehind = async ({ cookies, headers }: Pick<NextRequest, 'cookies' | 'headers'>) =>
  actorOf(await sessionOf((name) => cookies.get(name)?.value, cameSecure(headers.get('x-forwarded-proto'))))

function sendToSignIn({ nextUrl, language }: Asked, headers: Record<string, string>): Response {
  const to = `${nextUrl.pathname}${nextUrl.search}`
  const address = new URL(inLanguage(`/sign-in?${new URLSearchParams({ to })}`, language), nextUrl)
  return NextResponse.redirect(address, { status: 303, headers: { ...headers, 'Cache-Control': 'no-store' } })
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

/**
 * Whether an address can be answered: `away` without the database, `gone` for an entry that was withdrawn,
 * `absent` for what is not published (the page says so; thrown from a page it would be blank without
 * JavaScript). The question about an entry tells of the database too, so only one is asked.
 */
async function stateOf(request: Asked): Promise<keyof typeof STATUS | 'away'> {
  const url = request.nextUrl
  const [, kind, given = '', job] = ENTRY_PAGE.exec(url.pathname) ?? []
  if (VERSIONS_PAGE.test(url.pathname) || DESK_PAGE.test(url.pathname))
    return (await reachable()) ? versionsState(request) : 'away'
  if (SHEET_PAGE.test(url.pathname)) return (await reachable()) ? sheetState(request) : 'away'
  if (kind === undefined) return (await reachable()) ? contentState(url.pathname) : 'away'
  const slug = decoded(given)
  const revision = wholeNumber(url.searchParams.get(job ? 'r' : 'revision') ?? undefined)
  // A page of content stands before an entry of the same name, but for an entry's revision.
  if (
    (kind === 'material' || kind === 'source') &&
    revision === undefined &&
    hasContentPage(`${kind}s`, slug)
  )
    return (await reachable()) ? 'open' : 'away'
  return Promise.race([
    addressState(kind as WrittenKind, slug, revision).then(
      ({ state }) => state,
      () => 'away' as const,
    ),
    new Promise<'away'>((resolve) => setTimeout(resolve, PATIENCE_MS, 'away').unref()),
  ])
}

/** Whether there is such an entry, and such a version of it, for whoever asks. */
async function versionsState({ nextUrl, cookies, headers }: Asked): Promise<'open' | 'absent'> {
  const actor = await actorBehind({ cookies, headers })
  const [, id] = DESK_PAGE.exec(nextUrl.pathname) ?? []
  if (id !== undefined) return (await isOnDesk(decoded(id))) ? 'open' : 'absent'
  const [, slug = '', page, number] = VERSIONS_PAGE.exec(nextUrl.pathname) ?? []
  const entry = await entryHead(actor, decoded(slug))
  const { searchParams } = nextUrl
  const numbers =
    page === 'compare'
      ? [searchParams.get('from'), searchParams.get('to')]
      : [page === 'cite' ? searchParams.get('revision') : (number ?? null)]
  if (page === 'cite' && entry !== null) {
    const { state } = await addressState(entry.kind, entry.slug, wholeNumber(numbers[0] ?? undefined))
    return state === 'open' ? 'open' : 'absent'
  }
  const asked = numbers.flatMap((one) => (one === null ? [] : (wholeNumber(one) ?? 0)))
  return entry !== null && asked.every((one) => one >= 1 && one <= entry.latest) ? 'open' : 'absent'
}

/** Whether whoever asks keeps such a sheet; to a guest the door says no. */
async function sheetState({ nextUrl, cookies, headers }: Asked): Promise<'open' | 'absent'> {
  const actor = await actorBehind({ cookies, headers })
  const [, id = ''] = SHEET_PAGE.exec(nextUrl.pathname) ?? []
  return actor.kind !== 'member' || (await keepsSheet(actor.key, decoded(id))) ? 'open' : 'absent'
}

/** Whether every part of an address can be decoded. */
const isReadable = (path: string): boolean => decodable(path) !== undefined

function decodable(text: string): string | undefined {
  try {
    return decodeURIComponent(text)
  } catch {
    return undefined
  }
}

/** A part of the address as the page will be given it; what cannot be decoded stands for itself. */
const decoded = (part: string): string => decodable(part) ?? part

function contentState(path: string): 'open' | 'absent' {
  const [, vocabulary, term = ''] = TERM_PAGE.exec(path) ?? []
  if (vocabulary !== undefined) return hasTermPage(vocabulary, decoded(term)) ? 'open' : 'absent'
  const [, kind, id = ''] = CONTENT_PAGE.exec(path) ?? []
  return kind === undefined || hasContentPage(kind as ContentPage, decoded(id)) ? 'open' : 'absent'
}

let asking: Promise<boolean> | undefined

/** Requests that arrive while the database is being asked share the answer. */
function reachable(): Promise<boolean> {
  const answer = asking ?? ping().finally(forget)
  asking = answer
  return answer
}

function forget(): void {
  asking = undefined
}

// Bodies of photos pass by: the gate would hold each in memory, twice, before its route saw a byte. Those routes bound
// what they read, set the same headers and answer 503 by themselves.
export const config = {
  matcher: '/((?!_next/static|_next/image|api/v1/photos/[0-9a-f-]+$|photos/add$).*)',
}
