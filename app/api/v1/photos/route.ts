import { Refusal } from '#lib/errors.ts'
import { type Announcement, beginUpload } from '#lib/workflow/photo-upload.ts'
import { readJson } from '../../../_http/body.ts'
import { words } from '../../../_words/index.ts'
import { answerUpload, guarded } from './upload.ts'

const MAX_ANNOUNCEMENT = 2000

/** Announces a file: `{ key, size, sha256?, keepDate? }`. The same key again answers how far it has come. */
export const POST = (request: Request): Promise<Response> =>
  guarded('/api/v1/photos', request, async (actor) => {
    const read = await readJson(request, MAX_ANNOUNCEMENT)
    if (!read.ok) throw new Refusal('invalid', words('faults')('request.not-json'))
    const status = await beginUpload(actor, read.value as Announcement)
    const answer = answerUpload(status, status.offset === 0 ? 201 : 200)
    answer.headers.set('Location', `/api/v1/photos/${status.key}`)
    return answer
  })
