import { z } from 'zod'
import { Refusal } from '#lib/errors.ts'
import { appendUpload, giveUpUpload, readUpload } from '#lib/workflow/photo-upload.ts'
import { answerProblem, problemOf } from '../../../../_http/problem.ts'
import { words } from '../../../../_words/index.ts'
import { answerUpload, guarded, letWork, placeOf } from '../upload.ts'

interface Context {
  params: Promise<{ key: string }>
}

/** How long an answer about a whole file waits for the picture, so that nobody need ask again and again. */
const PATIENCE_MS = 10_000

const keyOf = async ({ params }: Context): Promise<string> => {
  const { key } = await params
  if (!z.uuid().safeParse(key).success) throw new Refusal('not-found', words('photos')('upload.noSuch'))
  return key
}

/** How an upload stands; of a whole file, once it is a picture or refused, or after ten seconds. */
export const GET = (request: Request, context: Context): Promise<Response> =>
  guarded('/api/v1/photos/[key]', request, async (actor) => {
    const key = await keyOf(context)
    let status = await readUpload(actor, key)
    const isDone = async () => {
      status = await readUpload(actor, key)
      return status.state !== 'waiting'
    }
    if (status.state === 'waiting') await letWork(PATIENCE_MS, isDone)
    return answerUpload(status)
  })

/** How many bytes have arrived. */
export const HEAD = (request: Request, context: Context): Promise<Response> =>
  guarded('/api/v1/photos/[key]', request, async (actor) => {
    const status = await readUpload(actor, await keyOf(context))
    return new Response(null, { status: 204, headers: placeOf(status) })
  })

/** The bytes from `Upload-Offset` on, as many as the connection brings. */
export const PATCH = (request: Request, context: Context): Promise<Response> =>
  guarded('/api/v1/photos/[key]', request, async (actor) => {
    const key = await keyOf(context)
    if (request.headers.get('content-type') !== 'application/partial-upload')
      return answerProblem(problemOf(415, words('photos')('upload.type')))
    const offset = /^\d{1,9}$/.exec(request.headers.get('upload-offset') ?? '')?.[0]
    if (offset === undefined) return answerProblem(problemOf(400, words('photos')('upload.offset')))
    const status = await appendUpload(actor, key, Number(offset), request.body ?? new Blob().stream())
    if (status.state === 'waiting') void letWork(0, async () => true)
    return answerUpload(status)
  })

/** Gives the upload up. */
export const DELETE = (request: Request, context: Context): Promise<Response> =>
  guarded('/api/v1/photos/[key]', request, async (actor) => {
    await giveUpUpload(actor, await keyOf(context))
    return new Response(null, { status: 204 })
  })
