import { createReadStream } from 'node:fs'
import { rm } from 'node:fs/promises'
import { v5 } from 'uuid'
import { z } from 'zod'
import { speaking } from '#app/asked.ts'
import type { Actor } from '#lib/access/actor.ts'
import { cameSecure } from '#lib/auth/current.ts'
import type { UploadStatus } from '#lib/db/uploads.ts'
import { Refusal } from '#lib/errors.ts'
import { photoFault } from '#lib/photos/encode.ts'
import { MAX_BYTES } from '#lib/photos/limits.ts'
import type { Received } from '#lib/photos/receive.ts'
import { appendUpload, beginUpload, readUpload } from '#lib/workflow/photo-upload.ts'
import { pathWithin } from '../../_http/actor.ts'
import { notTakenPage } from '../../_http/plain-page.ts'
import { faultInAddress } from '../../_ui/photo-told.tsx'
import { words } from '../../_words/index.ts'
import { splitLanguage } from '../../_words/language.ts'
import { guarded, letWork } from '../../api/v1/photos/upload.ts'
import { readPhotoForm } from './read-form.ts'

/** How long the form waits for its pictures; those that are not ready then are among one's own a little later. */
const PATIENCE_MS = 60_000

/**
 * Photos from a form, for who has no script: `key`, `keepDate`, then the files as `photo`; the address has `back`, a path
 * of this site. Leads there with `photo=` for each picture, `photoAgain=` for one that had been sent before, and
 * `photoFault=` for each file that became none. What is refused altogether is a page in the language of `back`.
 */
export async function POST(request: Request): Promise<Response> {
  const back = pathWithin(new URL(request.url).searchParams.get('back') ?? undefined)
  return speaking(splitLanguage(back).language, () => takeForm(request, back))
}

const takeForm = (request: Request, back: string): Promise<Response> =>
  guarded(
    '/photos/add',
    request,
    async (actor) => {
      const { fields, files } = await readPhotoForm(request)
      try {
        const key = z.uuid().safeParse(fields.key).data
        if (key === undefined) throw new Refusal('invalid', words('photos')('upload.noKey'))
        const told = new URLSearchParams()
        for (const [index, file] of files.entries())
          await take(actor, file, v5(String(index), key), fields.keepDate === 'on')
            .then((status) => tell(told, status))
            .catch((thrown: unknown) => tellFault(told, thrown))
        if (files.length === 0) told.append('photoFault', 'required')
        return new Response(null, {
          status: 303,
          headers: { Location: withTold(back, told) },
        })
      } finally {
        for (const { path } of files) await rm(path, { force: true })
      }
    },
    (problem) => notTakenPage(problem, back, cameSecure(request.headers.get('x-forwarded-proto'))),
  )

async function take(actor: Actor, file: Received, key: string, keepDate: boolean): Promise<UploadStatus> {
  if (file.end === 'too-long') throw photoFault('photo-too-large', undefined, MAX_BYTES / 1024 / 1024)
  const { offset, state } = await beginUpload(actor, { key, size: file.bytes, keepDate })
  if (state === 'receiving')
    await appendUpload(actor, key, offset, createReadStream(file.path, { start: offset }))
  await letWork(PATIENCE_MS, async () => (await readUpload(actor, key)).state !== 'waiting')
  return readUpload(actor, key)
}

function tell(told: URLSearchParams, { photo, known, fault }: UploadStatus): void {
  const twice = photo !== null && told.getAll('photo').includes(photo.sha256)
  if (photo !== null) told.append(known || twice ? 'photoAgain' : 'photo', photo.sha256)
  if (fault !== null) told.append('photoFault', faultInAddress(fault))
}

function tellFault(told: URLSearchParams, thrown: unknown): void {
  if (!(thrown instanceof Refusal)) throw thrown
  told.append('photoFault', faultInAddress(thrown.faults[0] ?? { code: thrown.code }))
}

function withTold(back: string, told: URLSearchParams): string {
  const [path = '/', hash] = back.split('#', 2)
  const joined = told.size === 0 ? path : `${path}${path.includes('?') ? '&' : '?'}${told}`
  return hash === undefined ? joined : `${joined}#${hash}`
}
