import { Readable } from 'node:stream'
import { photoState } from '#lib/db/photos.ts'
import type { Format } from '#lib/photos/limits.ts'
import { nameOf, photoStore } from '#lib/photos/store.ts'
import { currentActor } from '../../../_http/actor.ts'
import { answerProblem, problemOf, problemOfThrown } from '../../../_http/problem.ts'

interface Context {
  params: Promise<{ sha: string; file: string }>
}

/**
 * What is under this name never changes, but it may be erased or withdrawn, and nobody may be shown a kept copy then:
 * copies are kept, and asked about by their tag each time.
 */
const KEEP = { open: 'public, no-cache', private: 'private, no-cache' } as const

const TYPES: Record<Format, string> = { webp: 'image/webp', jpg: 'image/jpeg' }

/** A picture, in one of its widths (`768.webp`) or as it is kept (`kept.jpg`). */
export async function GET(request: Request, { params }: Context): Promise<Response> {
  try {
    const { sha, file } = await params
    const [, width, format] = /^(\d{2,4}|kept)\.(webp|jpg)$/.exec(file) ?? []
    if (width === undefined || (format !== 'webp' && format !== 'jpg')) return answerProblem(problemOf(404))
    const state = await photoState(await currentActor(), sha)
    if (state === 'gone') return answerProblem(problemOf(410))
    if (state === 'absent') return answerProblem(problemOf(404))
    const tag = `"${sha.slice(0, 16)}-${file}"`
    const headers = { 'Cache-Control': KEEP[state], ETag: tag }
    if (request.headers.get('if-none-match')?.includes(tag))
      return new Response(null, { status: 304, headers })
    const name = width === 'kept' ? nameOf.kept(sha) : nameOf.screen(sha, Number(width), format)
    const found = await photoStore().get(name)
    if (found === null) return answerProblem(problemOf(404))
    const told = { ...headers, 'Content-Type': TYPES[format], 'Content-Length': String(found.bytes) }
    if (request.method === 'HEAD') found.stream.destroy()
    const body = request.method === 'HEAD' ? null : (Readable.toWeb(found.stream) as ReadableStream)
    return new Response(body, { headers: told })
  } catch (thrown) {
    return answerProblem(problemOfThrown(thrown))
  }
}

export { GET as HEAD }
