import { type ContentPage, hasContentPage, hasTermPage } from '#lib/content/pages.ts'
import { addressState } from '#lib/db/entries.ts'
import { ping } from '#lib/db/health.ts'
import { keepsSheet } from '#lib/db/kept-sheets.ts'
import { isOnDesk } from '#lib/db/review.ts'
import { entryHead } from '#lib/db/versions.ts'
import type { WrittenKind } from '#lib/entry/body.ts'
import { wholeNumber } from '../_ui/query.ts'
import { type Asked, actorBehind, decoded } from './asked.ts'

const ENTRY_PAGE = /^\/(recipe|case|material|source|row)s\/([^/]+)(?:\/photos|(\/job))?$/

const CONTENT_PAGE = /^\/(tables|guides|terms)\/([^/]+)$/

const TERM_PAGE = /^\/terms\/([^/]+)\/([^/]+)$/

/** Pages about an entry's versions; the numbers of versions stand in the address too. */
const VERSIONS_PAGE = /^\/entries\/([^/]+)\/(versions|compare|cite|adaptations)(?:\/([^/]+))?$/

const DESK_PAGE = /^\/review\/([^/]+)$/

const SHEET_PAGE = /^\/account\/sheets\/(?!new$)([^/]+)$/

/** The status of a page that can be answered. */
export const STATUS = { open: 200, gone: 410, absent: 404 } as const

/** How long a page waits for a database that neither answers nor refuses; a busy machine is not an absent one. */
const PATIENCE_MS = 5000

/**
 * Whether an address can be answered: `away` without the database, `gone` for an entry that was withdrawn,
 * `absent` for what is not published (the page says so; thrown from a page it would be blank without
 * JavaScript). The question about an entry tells of the database too, so only one is asked.
 */
export async function stateOf(request: Asked): Promise<keyof typeof STATUS | 'away'> {
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
