import { forgetPhotos, keptPages } from './copies.ts'
import { entryOf, photoOf, photosOf } from './copy.ts'
import { HEADS } from './heads.ts'
import { languageOf, withdrawnSince } from './note.ts'

/** Most entries that the site is asked about at once, as its description says. */
const MOST_ASKED = 40

/** How long an answer is good for while the browser stays in touch. */
const REST_MS = 10 * 60_000
let askedAt = 0

type State = 'published' | 'withdrawn' | 'erased'
type Kept = Awaited<ReturnType<typeof keptPages>>[number]

/** What a page is told about the copy that it shows. */
export interface Told {
  readonly address: string
  readonly words: string
}

/**
 * Asks the site how the entries stand that pages are kept of, and marks or throws away the copies of what was taken
 * down. Without a signal nothing happens; the next page, or the signal coming back, asks again.
 *
 * @param now also when it was asked a while ago
 */
export async function checkStanding(now: boolean): Promise<Told[]> {
  if (!now && Date.now() - askedAt < REST_MS) return []
  const kept = grouped(await keptPages())
  const slugs = [...kept.keys()].filter((slug) => slug !== null)
  const told: Told[] = []
  for (let at = 0; at < slugs.length; at += MOST_ASKED) {
    const states = await ask(slugs.slice(at, at + MOST_ASKED))
    if (states === undefined) return told
    for (const [slug, state] of states)
      for (const copy of kept.get(slug) ?? []) told.push(...(await mark(copy, state)))
  }
  askedAt = Date.now()
  return told
}

function grouped(pages: readonly Kept[]): Map<string | null, Kept[]> {
  const groups = new Map<string | null, Kept[]>()
  for (const page of pages) {
    const slug = entryOf(page.request.url)
    groups.set(slug, [...(groups.get(slug) ?? []), page])
  }
  return groups
}

async function ask(slugs: readonly string[]): Promise<Map<string, State> | undefined> {
  try {
    const query = new URLSearchParams(slugs.map((slug) => ['slug', slug]))
    const answer = await fetch(`/api/v1/standing?${query}`, { cache: 'no-store' })
    if (!answer.ok) return undefined
    const { entries } = (await answer.json()) as { entries: readonly { slug: string; state: State }[] }
    return new Map(entries.map(({ slug, state }) => [slug, state]))
  } catch {
    return undefined
  }
}

/** Marks a copy as withdrawn, or as not withdrawn any more, and throws away that of an erased entry. */
async function mark({ store, request }: Kept, state: State): Promise<Told[]> {
  const copy = await store.match(request)
  if (!copy) return []
  const isMarked = copy.headers.has(HEADS.withdrawn)
  if (state === 'published' && !isMarked) return []
  const html = await copy.text()
  // Withdrawing an entry hides its photos too.
  if (state !== 'published') await forgetPhotos(new Set(photosOf(html).map(photoOf)))
  if (state === 'erased') await store.delete(request)
  else if (isMarked !== (state === 'withdrawn')) {
    const headers = new Headers(copy.headers)
    if (state === 'withdrawn') headers.set(HEADS.withdrawn, '1')
    else headers.delete(HEADS.withdrawn)
    await store.put(request, new Response(html, { headers }))
  }
  return state === 'published' ? [] : [{ address: request.url, words: withdrawnSince(languageOf(html)) }]
}
