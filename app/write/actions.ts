'use server'

import type { Member } from '#lib/access/actor.ts'
import { ACTIONS, type ActionDoor, mayPass } from '#lib/access/doors.ts'
import { type Draft, ownDraft } from '#lib/db/drafts.ts'
import { SIDES } from '#lib/entry/merge.ts'
import { Refusal } from '#lib/errors.ts'
import { discardDraft } from '#lib/workflow/draft-begin.ts'
import type { Changes } from '#lib/workflow/draft-fields.ts'
import { fillDraft, holdText, saveDraft, settleHeld } from '#lib/workflow/draft-save.ts'
import { submitDraft } from '#lib/workflow/draft-submit.ts'
import { EditConflict } from '#lib/workflow/submit.ts'
import { currentActor, signInPath } from '../_http/actor.ts'
import { redirect } from '../_http/redirect.ts'
import { refusalSentence } from '../_http/refusal-sentence.ts'
import { addressWith } from '../_ui/query.ts'
import { formatList } from '../_words/format.ts'
import { words } from '../_words/index.ts'
import { findingsToMend } from '../_write/finding-fields.tsx'
import { fullLabel, numberIn } from '../_write/labels.ts'
import { LAYOUTS } from '../_write/layout.ts'
import { pointingFaults } from '../_write/pointing-faults.ts'
import { addressOf, isOurAddress } from '../_write/proposals.ts'
import { itemsOf } from '../_write/read.ts'
import { type FormView, viewOf } from '../_write/view.ts'
import { askedFrom, beginFrom } from './begin-from.ts'
import { fillIn } from './fill-in.ts'
import { type PostedStep, readChoices, readStep } from './read-form.ts'
import { takeOverNewer } from './take-over.ts'

/** Begins a draft: a new entry, a further version, an adaptation, a visit. */
export async function beginWriting(form: FormData): Promise<void> {
  const text = (name: string) => String(form.get(name) ?? '')
  const asked = askedFrom(text)
  const actor = await memberOr('beginWriting', addressWith('/write/new', { ...asked }))
  const id = await beginFrom(actor, text('key'), asked).catch((thrown) =>
    refused(thrown, '/write/new', { ...asked }),
  )
  redirect(asked.late === '' ? `/write/${id}` : `/write/${id}/both`)
}

/** Saves a step of a form and goes where its writer wanted. Signed out, what was typed is held for them. */
export async function saveStep(form: FormData): Promise<void> {
  const posted = readStep(form)
  const { id, step, did, changes } = posted
  const here = `/write/${id}/${step}`
  const actor = await currentActor()
  if (actor.kind !== 'member' || !mayPass(actor, ACTIONS.saveStep)) {
    if (Object.keys(changes).length > 0)
      await holdText(id, changes).catch((thrown) => refused(thrown, '/write', {}))
    redirect(signInPath(`/write/${id}/both`))
  }
  const saved = await saveDraft(actor, id, changes).catch((thrown) => keepRest(actor, posted, thrown))
  if (saved.sent) redirect(`/write/${id}`)
  if (saved.conflicts.length > 0) redirect(addressWith(`/write/${id}/both`, { step }))
  const [verb, list = ''] = did.split(' ')
  if (verb === 'remove') redirect(addressWith(here, { removed: await removeItem(actor, id, list) }))
  if (verb === 'add') {
    const { typed, version } = await mustHave(actor, id)
    const next = (itemsOf(typed, list).at(-1) ?? -1) + 1
    // A script takes an address that differs in its item alone for a place on the page as it is, and draws nothing new.
    const saved = String(version)
    redirect(`${addressWith(here, { more: list, saved })}#item-${list}.${next}`)
  }
  const view = await fillAndView(actor, id)
  if (verb === 'send') return send(actor, view.draft)
  const faulty = view.faults.some((fault) => fault.step === step && !fault.missing)
  if (faulty) redirect(addressWith(here, { look: 'mend' }))
  if (verb !== 'next') redirect(here)
  const steps = LAYOUTS[view.kind]
  const next = steps[steps.findIndex((one) => one.id === step) + 1]
  redirect(`/write/${id}/${next?.id ?? 'check'}`)
}

/** Keeps what was chosen where the same field was typed twice. */
export async function settleBoth(form: FormData): Promise<void> {
  const id = String(form.get(':draft') ?? '')
  const step = String(form.get(':step') ?? '')
  const actor = await memberOr('settleBoth', addressWith(`/write/${id}/both`, { step }))
  const saved = await settleHeld(actor, id, readChoices(form)).catch((thrown) =>
    refused(thrown, '/write', {}),
  )
  if (saved.conflicts.length > 0) redirect(addressWith(`/write/${id}/both`, { step, again: '1' }))
  redirect(saved.sent ? `/write/${id}` : `/write/${id}/${step || 'check'}`)
}

/** Brings a draft together with the version that came after the one it started from. */
export async function takeOver(form: FormData): Promise<void> {
  const id = String(form.get(':draft') ?? '')
  const actor = await memberOr('takeOver', `/write/${id}/merge`)
  const choices = [...form.entries()].flatMap(([name, value]) => {
    const side = SIDES.find((one) => one === value)
    return name.startsWith('choice-') && side ? [[name.slice('choice-'.length), side] as const] : []
  })
  const looked = { number: Number(form.get(':number')), version: Number(form.get(':version')) }
  const draft = await mustHave(actor, id)
  const done = await takeOverNewer(actor, draft, looked, Object.fromEntries(choices)).catch((thrown) =>
    refused(thrown, `/write/${id}/check`, {}),
  )
  const chosen = Object.fromEntries(choices.map(([path, side]) => [`choice-${path}`, side]))
  if (done !== 'done') redirect(addressWith(`/write/${id}/merge`, { look: done, ...chosen }))
  const { held } = await mustHave(actor, id)
  redirect(`/write/${id}/${held === null ? 'check' : 'both'}`)
}

/** Throws a draft away. */
export async function discard(form: FormData): Promise<void> {
  const actor = await memberOr('discard', '/write')
  await discardDraft(actor, String(form.get(':draft') ?? ''))
  redirect('/write')
}

async function memberOr(door: ActionDoor, back: string): Promise<Member> {
  const actor = await currentActor()
  if (actor.kind !== 'member' || !mayPass(actor, ACTIONS[door])) redirect(signInPath(back))
  return actor
}

/** A refusal is told by the page that it leads to; anything else is a fault of ours. */
function refused(thrown: unknown, to: string, query: Readonly<Record<string, string>>): never {
  if (!(thrown instanceof Refusal)) throw thrown
  redirect(
    thrown.code === 'not-found'
      ? '/write?gone=1'
      : addressWith(to, { ...query, refused: refusalSentence(thrown.message) }),
  )
}

/** Where some of a step cannot be kept, keeps the rest of it, and says by name what was not. */
async function keepRest(actor: Member, { id, step, changes }: PostedStep, thrown: unknown): Promise<never> {
  const here = `/write/${id}/${step}`
  const bad = new Set(thrown instanceof Refusal ? thrown.faults.map(({ field }) => field) : [])
  if (bad.size === 0) return refused(thrown, here, {})
  const rest = Object.entries(changes).filter(([field]) => !bad.has(field))
  await saveDraft(actor, id, Object.fromEntries(rest)).catch((again) => refused(again, here, {}))
  const labels = [...bad].map((field) => fullLabel(field, numberIn({})))
  redirect(addressWith(here, { refused: words('write')('form.notKept', { fields: formatList(labels) }) }))
}

/** Takes an item out of its list; resolves with the item by its place, as the page names it: `works.2`. */
async function removeItem(actor: Member, id: string, item: string): Promise<string> {
  const { typed } = await mustHave(actor, id)
  const under = Object.entries(typed).filter(([name]) => name === item || name.startsWith(`${item}.`))
  const changes: Changes = Object.fromEntries(under.map(([name, was]) => [name, { was, is: '' }]))
  await saveDraft(actor, id, changes).catch((thrown) => refused(thrown, '/write', {}))
  const [, list = '', number] = /^(.+)\.(\d+)$/.exec(item) ?? []
  return `${list}.${itemsOf(typed, list).indexOf(Number(number)) + 1}`
}

async function fillAndView(actor: Member, id: string) {
  const draft = await mustHave(actor, id)
  const view = await viewOf(draft)
  const filled = fillIn(draft, view)
  if (Object.keys(filled).length === 0) return view
  await fillDraft(actor, id, filled)
  return viewOf(await mustHave(actor, id))
}

const mustHave = async (actor: Member, id: string): Promise<Draft> =>
  (await ownDraft(actor.key, id)) ?? redirect('/write?gone=1')

/** Sends a draft in which nothing is amiss; otherwise its last page says what is. */
async function send(actor: Member, draft: Draft): Promise<void> {
  // What waits would stay behind: its writer chooses first.
  if (draft.held !== null) redirect(`/write/${draft.id}/both`)
  const look = `/write/${draft.id}/check?look=all`
  const view = await viewOf(draft, true)
  if (view.faults.length > 0 || findingsToMend(view).length > 0) redirect(look)
  if ((await pointingFaults(view)).length > 0) redirect(look)
  const { id } = draft
  try {
    await submitFree(actor, view)
  } catch (thrown) {
    if (thrown instanceof EditConflict) redirect(`/write/${id}/merge`)
    refused(thrown, `/write/${id}/check`, {})
  }
  redirect(`/write/${id}`)
}

/** Submits under an address that is free; where somebody takes ours at this very moment, under the next one. */
async function submitFree(actor: Member, view: FormView, tries = 3): Promise<void> {
  const { id, version, typed } = view.draft
  const note = typed['entry.note'] ?? ''
  try {
    await submitDraft(actor, { id, version, slug: await addressOf(view), body: view.read.body, note })
  } catch (thrown) {
    const taken = thrown instanceof Refusal && thrown.faults.some(({ code }) => code === 'taken')
    if (!taken || !isOurAddress(view) || tries <= 1) throw thrown
    await submitFree(actor, view, tries - 1)
  }
}
