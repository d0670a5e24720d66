import { type NextRequest, NextResponse } from 'next/server'
import { type ContentPage, hasContentPage } from '#lib/content/pages.ts'
import { addressState } from '#lib/db/entries.ts'
import { ping } from '#lib/db/health.ts'
import { RETRY_S, waitingPage } from './app/_http/plain-page.ts'
import { answerProblem, problemOf } from './app/_http/problem.ts'
import {
  contentSecurityPolicy,
  MAX_ADDRESS,
  MAX_BODY,
  makeNonce,
  securityHeaders,
} from './app/_http/security.ts'
import { wholeNumber } from './app/_ui/query.ts'
import { words } from './app/_words/index.ts'

/** Addresses that answer without the database: they say how things stand, or only compute. */
const STANDS_ALONE = /^\/(?:api\/health|api\/v1\/openapi\.json|api\/v1\/sums\/.*|icon\.svg|robots\.txt)$/

const ENTRY_PAGE = /^\/(recipe|case)s\/([^/]+)(\/job)?$/

const CONTENT_PAGE = /^\/(tables|sources|materials|guides|terms)\/([^/]+)$/

const STATUS = { open: 200, gone: 410, absent: 404 } as const

/** How long a page waits for a database that neither answers nor refuses; a busy machine is not an absent one. */
const PATIENCE_MS = 5000

/**
 * The gate before every page and every JSON answer: bounds what may come in, answers 503 while the
 * database is away (a page can't), and sets the headers that keep the browser to our own files.
 */
export async function proxy(request: NextRequest): Promise<Response> {
  const secure = request.headers.get('x-forwarded-proto') === 'https'
  const headers = securityHeaders(secure)
  const api = request.nextUrl.pathname.startsWith('/api/')

  const excess = excessOf(request)
  if (excess) return answerProblem(problemOf(excess.status, excess.words), headers)
  const state = STANDS_ALONE.test(request.nextUrl.pathname) ? 'open' : await stateOf(request.nextUrl)
  if (state === 'away') return away(api, secure)
  if (api) return NextResponse.next({ headers })

  const policy = contentSecurityPolicy(makeNonce(), process.env.NODE_ENV === 'development', secure)
  const inward = new Headers(request.headers)
  inward.set('Content-Security-Policy', policy)
  return NextResponse.next({
    request: { headers: inward },
    headers: { ...headers, 'Content-Security-Policy': policy },
    status: STATUS[state],
  })
}

function away(api: boolean, secure: boolean): Response {
  if (!api) return waitingPage(secure)
  return answerProblem(problemOf(503, words('faults')('unavailable.lead')), {
    ...securityHeaders(secure),
    'Retry-After': String(RETRY_S),
  })
}

function excessOf(request: NextRequest): { status: number; words: string } | undefined {
  const t = words('faults')
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
async function stateOf(url: URL): Promise<keyof typeof STATUS | 'away'> {
  const [, kind, slug = '', job] = ENTRY_PAGE.exec(url.pathname) ?? []
  if (kind !== 'recipe' && kind !== 'case') return (await reachable()) ? contentState(url.pathname) : 'away'
  const revision = wholeNumber(url.searchParams.get(job ? 'r' : 'revision') ?? undefined)
  return Promise.race([
    addressState(kind, decoded(slug), revision).then(
      ({ state }) => state,
      () => 'away' as const,
    ),
    new Promise<'away'>((resolve) => setTimeout(resolve, PATIENCE_MS, 'away').unref()),
  ])
}

/** A part of the address as the page will be given it; what cannot be decoded stands for itself. */
function decoded(part: string): string {
  try {
    return decodeURIComponent(part)
  } catch {
    return part
  }
}

function contentState(path: string): 'open' | 'absent' {
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

export const config = { matcher: '/((?!_next/static|_next/image).*)' }
