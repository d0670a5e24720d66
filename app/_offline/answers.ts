import { inLanguage, splitLanguage } from '../_words/language.ts'
import { LANGUAGES, type Language } from '../_words/languages.ts'
import {
  FILES,
  forgetPage,
  forgetPhotos,
  isOfThisBuild,
  keepFiles,
  keepPage,
  keptPage,
  keptPhoto,
  putPhoto,
} from './copies.ts'
import { blankInstead, blanksFor, copyOf, isOfDraft, photoOf, stepsOf } from './copy.ts'
import { GUEST_READER, HEADS } from './heads.ts'
import { languageOf, neverKept, sentencesOf, withNote } from './note.ts'
import { beginning, noteReader } from './readers.ts'

/** The page that lists what is kept; without a signal it stands in for what is not. */
const listFor = (language: Language) => inLanguage('/kept', language)

/** How long the site may take before a kept copy is shown in its place. */
const PATIENCE_MS = 10_000

/** What must be there before the signal first goes. */
export async function prepare(): Promise<void> {
  const files = await caches.open(FILES)
  for (const list of LANGUAGES.map(listFor)) {
    const answer = await fetch(list, { credentials: 'omit', cache: 'no-store' })
    if (!answer.ok) throw new Error(`The list of kept pages was answered with ${answer.status}`)
    const html = await answer.text()
    await keepFiles(html)
    await files.put(list, new Response(html, { headers: answer.headers }))
  }
}

/** The site, or what stands before it, says that it cannot answer just now. */
const isAway = ({ status }: Response) => status >= 502 && status <= 504

/**
 * A page from the site, or else its kept copy, or else the list of what is kept. What a site that is away says in its
 * own words is shown only where there is no copy.
 */
export async function answerPage({ request, event }: RouteGiven): Promise<Response> {
  const began = beginning()
  const asked = fetch(request)
  event.waitUntil(
    asked
      .then((answer) => take(request.url, answer, began, mayKeep(answer) ? answer.clone() : undefined))
      .catch(() => undefined),
  )
  const first = await Promise.race([asked.catch(() => undefined), rest(PATIENCE_MS)])
  if (first && !isAway(first)) return first
  const instead = await copyInstead(request.url, first !== undefined)
  // Nothing is kept: a slow site may take its time.
  return instead ?? asked.catch(() => listInstead(request.url))
}

/** What is kept of a page; for a page to begin a draft on, the way to its blank form. */
async function copyInstead(address: string, away: boolean): Promise<Response | undefined> {
  const copy = await keptPage(address)
  if (copy === undefined) return undefined
  const blank = blankInstead(address)
  return blank === undefined ? withNoteOf(copy, away) : Response.redirect(blank, 302)
}

const rest = (ms: number) => new Promise<undefined>((resolve) => setTimeout(resolve, ms, undefined))

async function withNoteOf(copy: Response, away: boolean): Promise<Response> {
  const html = await copy.text()
  const known = copyOf(copy.headers, new Date())
  const sentences = sentencesOf(known, { keep: copy.headers.get(HEADS.keep), away }, languageOf(html))
  const noted = withNote(html, known.withdrawn ? 'withdrawn' : 'kept', sentences)
  return new Response(noted, { headers: copy.headers })
}

async function listInstead(address: string): Promise<Response> {
  const { language } = splitLanguage(new URL(address).pathname)
  const list = await (await caches.open(FILES)).match(listFor(language))
  if (!list) return Response.error()
  const html = await list.text()
  return new Response(withNote(html, 'never', neverKept(languageOf(html))), {
    status: 503,
    headers: new Headers([...list.headers].filter(([name]) => !/^content-(?:encoding|length)$/i.test(name))),
  })
}

/** What the gate says may be kept, and came as it was asked for. */
const mayKeep = (answer: Response) => answer.ok && !answer.redirected && answer.headers.has(HEADS.keep)

/**
 * Takes note of who an answer was for, and keeps it where it may be kept.
 *
 * @param copy the answer once more, to be read; undefined where it is not to be kept
 */
async function take(
  address: string,
  { headers, status, type }: Response,
  began: number,
  copy?: Response,
): Promise<void> {
  const reader = headers.get(HEADS.reader)
  // A draft that was sent, or is somebody else's now, leads elsewhere.
  if (type === 'opaqueredirect' && isOfDraft(address)) return forgetPage(address)
  if (reader === null) return
  const isTheirs = await noteReader(reader, began)
  if (status === 404 || status === 410) return forgetPage(address)
  if (copy === undefined || !isTheirs) return
  const html = await copy.text()
  await keepPage(address, html, headers, reader)
  if (headers.get(HEADS.keep) === 'draft')
    for (const step of stepsOf(html, address)) {
      const { href } = new URL(step, address)
      if (!(await keptPage(href))) await keepAhead(href)
    }
  if (reader === GUEST_READER || headers.get(HEADS.keep) === 'blank') return
  for (const blank of blanksFor(html, address)) if (!mayNotWrite.has(reader)) await keepBlank(blank, reader)
}

/** How long a blank form is good for: what can be chosen on it changes now and then. */
const BLANK_MS = 24 * 3600 * 1000

/** Readers whom the site gave no form; they are not asked for again and again. */
const mayNotWrite = new Set<string>()

/** Keeps a blank form, unless it was kept lately. */
async function keepBlank(address: string, reader: string): Promise<void> {
  const copy = await keptPage(address)
  const now = new Date()
  const isFresh =
    copy && isOfThisBuild(copy) && now.getTime() - copyOf(copy.headers, now).keptAt.getTime() < BLANK_MS
  if (isFresh) return
  const status = await keepAhead(address)
  if (status === 403) mayNotWrite.add(reader)
}

/** Keeps a member's page that was not opened; resolves with what the site answered. */
async function keepAhead(address: string): Promise<number | undefined> {
  const began = beginning()
  const answer = await fetch(address).catch(() => undefined)
  const reader = answer?.headers.get(HEADS.reader) ?? GUEST_READER
  if (!answer || !mayKeep(answer) || reader === GUEST_READER) return answer?.status
  if (await noteReader(reader, began)) await keepPage(address, await answer.text(), answer.headers, reader)
  return answer.status
}

/**
 * A page says that it was opened. One that did not pass by here is asked for again and kept; where only the address
 * changed, somebody may have signed in or out, and the site is asked who reads now.
 */
export async function keepOpened(page: { address: string; loaded: boolean; passed: boolean }): Promise<void> {
  if (page.loaded && page.passed) return
  const began = beginning()
  const address = page.loaded ? page.address : listFor('en')
  const answer = await fetch(address, { cache: 'no-store' }).catch(() => undefined)
  if (answer) await take(address, answer, began, mayKeep(answer) ? answer : undefined)
}

/** A photo from the site, or else a kept one; what the site no longer shows is thrown away. */
export async function answerPhoto({ request, event }: RouteGiven): Promise<Response> {
  try {
    const answer = await fetch(request)
    if (answer.status === 404 || answer.status === 410)
      event.waitUntil(forgetPhotos(new Set([photoOf(request.url)])))
    else if (answer.ok) event.waitUntil(putPhoto(request.url, answer.clone()))
    return answer
  } catch {
    return (await keptPhoto(request.url)) ?? Response.error()
  }
}
