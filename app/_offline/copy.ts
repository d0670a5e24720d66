import { HEADS } from './heads.ts'

/** A copy older than this may be out of date, and says so. */
const OLD_AFTER_DAYS = 30
const DAY_MS = 24 * 3600 * 1000

/** What is known of a kept page without reading it. */
export interface Copy {
  readonly title: string
  readonly keptAt: Date
  readonly old: boolean
  readonly withdrawn: boolean
}

/** Reads what the worker noted as it kept a page. */
export function copyOf(headers: Headers, now: Date): Copy {
  const keptAt = new Date(Number(headers.get(HEADS.at)))
  return {
    title: decodeURIComponent(headers.get(HEADS.title) ?? ''),
    keptAt,
    old: now.getTime() - keptAt.getTime() > OLD_AFTER_DAYS * DAY_MS,
    withdrawn: headers.has(HEADS.withdrawn),
  }
}

/** Of the headers of an answer those that its copy is shown with, and when and by which build it was kept. */
export function headersOfCopy(given: Headers, html: string, at: Date, build: string): Headers {
  const headers = new Headers(given)
  // The copy is text, neither packed nor of the length that came over the line; nor is it cookies'.
  for (const name of ['Content-Encoding', 'Content-Length', 'Transfer-Encoding', 'Set-Cookie', 'Link'])
    headers.delete(name)
  headers.set(HEADS.at, String(at.getTime()))
  headers.set(HEADS.build, build)
  headers.set(HEADS.title, encodeURIComponent(titleOf(html)))
  return headers
}

const NAMED: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"', apos: "'" }

/** The title of a page, without the site's name behind it. */
export function titleOf(html: string): string {
  const [, title = ''] = /<title[^>]*>([^<]*)<\/title>/.exec(html) ?? []
  return title
    .replace(/&(?:#x([0-9a-f]+)|#(\d+)|(\w+));/gi, (all, hex, decimal, name) =>
      name !== undefined
        ? (NAMED[name] ?? all)
        : String.fromCodePoint(hex === undefined ? Number(decimal) : Number.parseInt(hex, 16)),
    )
    .replace(/ · [^·]*$/, '')
}

/** Whether an address is of a draft, in whichever language. */
export const isOfDraft = (address: string): boolean => draftOf(address) !== undefined

/** The draft that an address is of. */
export const draftOf = (address: string): string | undefined =>
  /^(?:\/[a-z]{2})?\/write\/([0-9a-f]{8}-[0-9a-f-]{27})(?:\/|$)/.exec(new URL(address).pathname)?.[1]

/** What a draft is begun from, as addresses say it: the first that is there counts. */
const BEGUN_FROM = ['from', 'back', 'adapt', 'of', 'kind'] as const

/**
 * The blank form that a page to begin a draft on, or the form itself with a draft's key, is about; undefined for any
 * other page.
 */
export function blankOf(address: string): string | undefined {
  const { pathname, searchParams, origin } = new URL(address)
  const [found, language = ''] = /^(\/[a-z]{2})?\/write\/(?:new|blank)$/.exec(pathname) ?? []
  const name = BEGUN_FROM.find((one) => (searchParams.get(one) ?? '') !== '')
  if (found === undefined || name === undefined || searchParams.get('late')) return undefined
  return `${origin}${language}/write/blank?${new URLSearchParams([[name, searchParams.get(name) ?? '']])}`
}

/**
 * The blank form that a page to begin a draft on leads to; undefined for any other page. The work that a visit is made to
 * goes with it: all works of a case have one form.
 */
export function blankInstead(address: string): string | undefined {
  const blank = blankOf(address)
  if (blank === undefined || !/\/write\/new$/.test(new URL(address).pathname)) return undefined
  const work = workOf(address)
  return work === null ? blank : `${blank}&${new URLSearchParams({ work })}`
}

/** The work that a page to begin a visit on is for; null for one of any work. */
export const workOf = (address: string): string | null => new URL(address).searchParams.get('work') || null

/** Blank forms that are worth having ahead where a page is kept: of a new case, and of a visit to the page's own. */
export function blanksFor(html: string, address: string): string[] {
  const [language = ''] = /^\/[a-z]{2}(?=\/|$)/.exec(new URL(address).pathname) ?? []
  const visits = [...html.matchAll(/href="((?:\/[a-z]{2})?\/write\/new\?of=[a-z0-9-]+)"/g)]
  return [`${language}/write/new?kind=case`, ...visits.map(([, href = '']) => href)].flatMap(
    (path) => blankOf(new URL(path, address).href) ?? [],
  )
}

/** Slug of the entry that a page is about, of the form for a visit its case's; null for a page about none. */
export function entryOf(address: string): string | null {
  const blank = blankOf(address)
  if (blank !== undefined) return new URL(blank).searchParams.get('of')
  const [, slug] =
    /^(?:\/[a-z]{2})?\/(?:recipes|cases|materials|sources|rows)\/([a-z0-9-]+)(?:\/|$)/.exec(
      new URL(address).pathname,
    ) ?? []
  return slug ?? null
}

/** Files of the build that a page names, in its head or for its scripts. */
export const filesOf = (html: string): string[] => [
  ...new Set([...html.matchAll(/\/_next\/static\/[\w./~%@[\]()-]+\.\w+/g)].map(([file]) => file)),
]

/** How wide a photo of a phone's screen is kept at the least, in pixels. */
const SCREEN_PX = 768

/** Every photo on a page, in the width that a screen needs. */
export function photosOf(html: string): string[] {
  const widths = new Map<string, number[]>()
  for (const [, sha = '', width] of html.matchAll(/\/photos\/([0-9a-f]{64})\/(\d+)\.webp/g))
    widths.set(sha, [...(widths.get(sha) ?? []), Number(width)])
  return [...widths].map(([sha, all]) => {
    const sorted = all.sort((a, b) => a - b)
    return `/photos/${sha}/${sorted.find((width) => width >= SCREEN_PX) ?? sorted.at(-1)}.webp`
  })
}

/** The photo, in whichever width, that an address is of. */
export const photoOf = (address: string): string | undefined =>
  /\/photos\/([0-9a-f]{64})\//.exec(address)?.[1]

/** Steps of the draft that a page is a step of: they are kept with it, so that all of it can be written. */
export function stepsOf(html: string, address: string): string[] {
  const [, draft] = /^((?:\/[a-z]{2})?\/write\/[0-9a-f-]{36}\/)[a-z]+$/.exec(new URL(address).pathname) ?? []
  if (draft === undefined) return []
  const links = [...html.matchAll(/href="((?:\/[a-z]{2})?\/write\/[0-9a-f-]{36}\/[a-z]+)"/g)].map(
    ([, href = '']) => href,
  )
  return [...new Set(links)].filter(
    (href) => href.startsWith(draft) && !/\/(?:both|merge)$/.test(href) && href !== new URL(address).pathname,
  )
}
