import { z } from 'zod'
import { mayPass, ROUTES } from '#lib/access/doors.ts'
import { faultsOf } from '#lib/api/faults.ts'
import { type Draft, ownDraft } from '#lib/db/drafts.ts'
import { LONGEST_TEXT } from '#lib/workflow/draft-fields.ts'
import { saveDraft } from '#lib/workflow/draft-save.ts'
import { currentActor } from '../../../_http/actor.ts'
import { readJson } from '../../../_http/body.ts'
import { answerProblem, problemOf, problemOfThrown } from '../../../_http/problem.ts'
import { isOurs } from '../../../_http/same-origin.ts'
import { MAX_BODY } from '../../../_http/security.ts'
import { words } from '../../../_words/index.ts'
import { timeOfDay } from '../../../_write/format-time.ts'
import { stepOf } from '../../../_write/layout.ts'
import type { KeptAnswer } from '../../../_write/send-changes.ts'
import { viewOf } from '../../../_write/view.ts'
import { askedFrom, beginFrom } from '../../../write/begin-from.ts'

const text = z.string().max(LONGEST_TEXT)
const posted = z.strictObject({
  step: z.string().max(40),
  /** Version of the draft that the page knows; without it the page is told how all its fields stand. */
  version: z.number().int().nonnegative().default(0),
  changes: z.record(z.string().max(160), z.strictObject({ was: text, is: text })),
  /** Key of who typed it: somebody else may be signed in by now. */
  by: z.string().max(160).optional(),
  /** Of a draft that was begun with no signal: what it begins from. */
  begin: z.record(z.string(), z.string().max(200)).optional(),
})

/**
 * Saves what was typed in a step while it is typed, and says what there is to say beside its fields. A draft that was
 * begun with no signal is begun here first, under the key that its browser gave it: sent again, it is there already.
 * Text of somebody else is refused before its draft is looked for: only to its own writer is a draft not there.
 */
export async function POST(
  request: Request,
  { params }: { params: Promise<{ draft: string }> },
): Promise<Response> {
  try {
    if (!isOurs(request)) return answerProblem(problemOf(403))
    const actor = await currentActor()
    if (actor.kind !== 'member') return answerProblem(problemOf(401))
    if (!mayPass(actor, ROUTES['/api/drafts/[draft]'])) return answerProblem(problemOf(403))
    const read = await readJson(request, MAX_BODY)
    const t = words('faults')
    if (!read.ok)
      return read.why === 'too-large'
        ? answerProblem(problemOf(413, t('request.too-large', { limit: MAX_BODY })))
        : answerProblem(problemOf(400, t('request.not-json')))
    const parsed = posted.safeParse(read.value)
    if (!parsed.success)
      return answerProblem(problemOf(422, t('request.invalid'), faultsOf(parsed.error.issues, read.value)))
    const { draft: id } = await params
    const { changes, step, version, by, begin } = parsed.data
    // What begins a draft always says whose it is to be.
    if ((by !== undefined || begin !== undefined) && by !== actor.key)
      return answerProblem(problemOf(409, words('write')('blank.notYours')))
    if (begin !== undefined && (await ownDraft(actor.key, id)) === null)
      await beginFrom(
        actor,
        id,
        askedFrom((name) => begin[name]),
      )
    const { savedAt, ...saved } = await saveDraft(actor, id, changes)
    const draft = await ownDraft(actor.key, id)
    // Another version than this save makes: somebody saved elsewhere since the page last heard.
    const expected = Object.keys(changes).length > 0 ? version + 1 : version
    const answer: KeptAnswer = {
      ...saved,
      time: timeOfDay(savedAt),
      said: draft === null ? [] : await sayOf(draft, step),
      ...(draft !== null && saved.version !== expected && { stands: textOf(draft, step) }),
    }
    return Response.json(answer, { headers: { 'Cache-Control': 'no-store' } })
  } catch (thrown) {
    return answerProblem(problemOfThrown(thrown))
  }
}

/** How the fields of a step stand. */
const textOf = ({ kind, typed }: Draft, step: string) =>
  Object.fromEntries(Object.entries(typed).filter(([name]) => stepOf(kind, name) === step))

async function sayOf(draft: Draft, step: string): Promise<KeptAnswer['said']> {
  const { faults, notes } = await viewOf(draft)
  const wrong = faults.filter((fault) => fault.step === step && !fault.missing)
  const faulty = new Set(wrong.map(({ name }) => name))
  return [
    ...wrong.map(({ name, sentence }) => ({ name, kind: 'fault' as const, words: sentence })),
    ...[...notes].flatMap(([name, sentence]) =>
      faulty.has(name) ? [] : [{ name, kind: 'note' as const, words: sentence }],
    ),
  ]
}
