import { setTimeout as sleep } from 'node:timers/promises'
import type { Actor } from '#lib/access/actor.ts'
import { mayPass, ROUTES, type RouteDoor } from '#lib/access/doors.ts'
import type { Problem } from '#lib/api/problem.ts'
import type { UploadStatus } from '#lib/db/uploads.ts'
import { WrongOffset } from '#lib/workflow/photo-upload.ts'
import { workPhotos } from '#lib/workflow/photo-work.ts'
import { currentActor } from '../../../_http/actor.ts'
import { faultSentence } from '../../../_http/fault-sentence.ts'
import { answerProblem, problemOf, problemOfThrown } from '../../../_http/problem.ts'
import { isOurs } from '../../../_http/same-origin.ts'
import { securityHeaders } from '../../../_http/security.ts'
import { words } from '../../../_words/index.ts'

/** Headers of every answer here: the gate, which would hold a whole file in memory, does not stand before these routes. */
const headersFor = (request: Request) => ({
  ...securityHeaders(request.headers.get('x-forwarded-proto') === 'https'),
  'Cache-Control': 'no-store',
})

/**
 * Does the work for someone who may, on a request from a page of ours; all else is answered with a problem.
 *
 * @param say how it is answered: as JSON for a script
 */
export async function guarded(
  door: RouteDoor,
  request: Request,
  work: (actor: Actor) => Promise<Response>,
  say: (problem: Problem, headers: Record<string, string>) => Response = answerProblem,
): Promise<Response> {
  const headers = headersFor(request)
  try {
    if (request.method !== 'GET' && request.method !== 'HEAD' && !isOurs(request))
      return say(problemOf(403, words('photos')('upload.elsewhere')), headers)
    const actor = await currentActor()
    if (!mayPass(actor, ROUTES[door])) return say(refusalOf(actor), headers)
    const answer = await work(actor)
    for (const [name, value] of Object.entries(headers)) answer.headers.set(name, value)
    return answer
  } catch (thrown) {
    const place = thrown instanceof WrongOffset && { 'Upload-Offset': String(thrown.offset) }
    return say(problemOfThrown(thrown, labelOf), { ...headers, ...place })
  }
}

/** The page that sends photos shows the sentence as it is. */
const labelOf = (field: string) => (field === 'photo' ? words('photos')('photo') : field)

const refusalOf = (actor: Actor) =>
  actor.kind === 'guest'
    ? problemOf(401, words('photos')('upload.signIn'))
    : problemOf(403, words('photos')('upload.notYours'))

/** How an upload stands, as JSON and in the header fields of the IETF's draft on resumable uploads. */
export function answerUpload(status: UploadStatus, code = 200): Response {
  const { photo, fault, ...told } = status
  return Response.json(
    {
      ...told,
      photo: photo && { ...photo, src: `/photos/${photo.sha256}/${photo.sizes[0]}.jpg` },
      fault: fault && { ...fault, detail: faultSentence(fault, words('photos')('photo')) },
    },
    { status: code, headers: placeOf(status) },
  )
}

export const placeOf = ({ offset, state }: UploadStatus) => ({
  'Upload-Offset': String(offset),
  'Upload-Complete': state === 'receiving' ? '?0' : '?1',
})

/**
 * Sees to it that waiting files are worked on, and waits a while until one is done. Whatever fails is logged; the file goes on
 * waiting and is tried again by whoever asks next.
 */
export async function letWork(patienceMs: number, isDone: () => Promise<boolean>): Promise<void> {
  void workPhotos().catch((error: unknown) => console.error(error))
  const deadline = performance.now() + patienceMs
  // Others' files may come before and after this one: only this one is waited for.
  while (!(await isDone()) && performance.now() < deadline) await sleep(ASK_MS)
}

/** How often a waiting answer looks whether its picture is there. */
const ASK_MS = 250
