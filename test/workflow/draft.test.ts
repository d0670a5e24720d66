import { v7 } from 'uuid'
import { describe, expect, it } from 'vitest'
import { GUEST } from '#lib/access/actor.ts'
import { db } from '#lib/db/client.ts'
import { listDrafts, ownDraft, revisionToStartFrom, sentAs } from '#lib/db/drafts.ts'
import { Refusal } from '#lib/errors.ts'
import { decide } from '#lib/workflow/decide.ts'
import { beginDraft, discardDraft } from '#lib/workflow/draft-begin.ts'
import { rebaseDraft } from '#lib/workflow/draft-rebase.ts'
import { fillDraft, holdText, saveDraft, settleHeld } from '#lib/workflow/draft-save.ts'
import { draftFaults, newerRevision, submitDraft } from '#lib/workflow/draft-submit.ts'
import { insertSideRows, readSideRows, type SideRow } from '#lib/workflow/record/side-tables.ts'
import { EditConflict, submit } from '#lib/workflow/submit.ts'
import {
  CONTRIBUTOR,
  makeRecipe,
  makeSubmission,
  OTHER,
  publish,
  REFERENCES,
  REVIEWER,
  verdictOn,
} from '../support/make.ts'

const NEW = { kind: 'recipe', slug: null, basedOn: null, adaptedFrom: null, typed: {} } as const
const begin = async (over: object = {}, actor = CONTRIBUTOR) =>
  (await beginDraft(actor, { id: v7(), ...NEW, ...over })).id
const read = async (id: string, actor = CONTRIBUTOR) => {
  const draft = await ownDraft(actor.key, id)
  if (draft === null) throw new Error('there is no such draft')
  return draft
}
const codeOf = (write: Promise<unknown>) =>
  write.then(
    () => 'done',
    (thrown: unknown) => (thrown instanceof Refusal ? thrown.code : Promise.reject(thrown)),
  )
const put = (is: string, was = '') => ({ was, is })
const chosen = (text: string, ...seen: string[]) => ({ text, seen })

describe('submitDraft(actor, draft)', () => {
  it('keeps a draft whose writer has a hundred versions waiting', async () => {
    const many = { ...CONTRIBUTOR, key: 'mason-of-a-hundred' }
    const now = new Date()
    const [entries, digest] = [Array.from({ length: 100 }, () => v7()), 'a'.repeat(64)]
    await db().entry.createMany({
      data: entries.map((id, index) => ({ id, kind: 'recipe' as const, slug: `waits-${index}` })),
    })
    await db().revision.createMany({
      data: entries.map((entryId) => ({
        id: v7(),
        entryId,
        number: 1,
        body: makeRecipe(),
        bodyDigest: digest,
        shape: 1,
        note: 'Waits.',
        authorKey: many.key,
        createdAt: now,
        digest,
        key: v7(),
      })),
    })
    const id = await begin({ typed: { title: 'One more' } }, many)
    const ready = { id, version: 1, slug: 'one-more', body: makeRecipe(), note: 'First.' }
    expect(await codeOf(submitDraft(many, ready, REFERENCES))).toBe('too-many')
    expect(await read(id, many)).toMatchObject({ typed: { title: 'One more' }, submittedRevisionId: null })
  })
})

describe('a draft', () => {
  it('begins once for one id, and is its writer’s alone', async () => {
    const id = await begin({ typed: { title: 'Lime' } })
    expect(await codeOf(beginDraft(CONTRIBUTOR, { id, ...NEW }))).toBe('done')
    expect(await codeOf(beginDraft(OTHER, { id, ...NEW }))).toBe('conflict')
    expect(await codeOf(beginDraft(GUEST, { id: v7(), ...NEW }))).toBe('forbidden')
    expect((await read(id)).typed).toEqual({ title: 'Lime' })
    expect(await ownDraft(OTHER.key, id)).toBeNull()
    expect(await ownDraft(OTHER.key, 'no id at all')).toBeNull()
    expect(await codeOf(saveDraft(OTHER, id, { title: put('Mine') }))).toBe('not-found')
    expect(await codeOf(saveDraft(REVIEWER, id, { title: put('Mine') }))).toBe('not-found')
  })

  it('keeps what was typed as it was typed, and saving it again changes nothing', async () => {
    const id = await begin()
    const changes = { title: put('  Lïme 🧱\nnext '), 'ingredients.0.parts': put('1,500 or so') }
    await saveDraft(CONTRIBUTOR, id, changes)
    const again = await saveDraft(CONTRIBUTOR, id, changes)
    expect(again.conflicts).toEqual([])
    expect((await read(id)).typed).toEqual({
      title: '  Lïme 🧱\nnext ',
      'ingredients.0.parts': '1,500 or so',
    })
  })

  it('takes from two places what each changed, and holds what both changed for its writer to choose', async () => {
    const id = await begin({ typed: { title: 'Lime', summary: 'Old' } })
    await saveDraft(CONTRIBUTOR, id, { title: put('Lime and sand', 'Lime') })
    const second = await saveDraft(CONTRIBUTOR, id, {
      title: put('Lime, no sand', 'Lime'),
      summary: put('New', 'Old'),
    })
    expect(second.conflicts).toEqual(['title'])
    const both = await read(id)
    expect(both.typed).toEqual({ title: 'Lime and sand', summary: 'New' })
    expect(both.held).toEqual({ title: ['Lime, no sand'] })
    await settleHeld(CONTRIBUTOR, id, { title: chosen('Lime, no sand', 'Lime and sand', 'Lime, no sand') })
    expect(await read(id)).toMatchObject({
      typed: { title: 'Lime, no sand', summary: 'New' },
      held: null,
      heldAt: null,
    })
  })

  it('loses no field when many places save at once', async () => {
    const id = await begin()
    await Promise.all(
      Array.from({ length: 30 }, (_, i) =>
        saveDraft(CONTRIBUTOR, id, { [`ingredients.${i % 10}.note`]: put(`note ${i}`) }),
      ),
    )
    const { typed, version, held } = await read(id)
    expect(Object.keys(typed)).toHaveLength(10)
    expect(version).toBe(31)
    // Three wrote to each field from the same start: one stands, the two others are held.
    const texts = [...Object.values(typed), ...Object.values(held ?? {}).flat()]
    expect(new Set(texts).size).toBe(30)
  })

  it('holds what comes in signed out, puts it nowhere, and knows no draft by guessing', async () => {
    const id = await begin({ typed: { title: 'Lime' } })
    await holdText(id, { title: put('Limes', 'Lime'), summary: put('', '') })
    expect(await read(id)).toMatchObject({ typed: { title: 'Lime' }, held: { title: ['Limes'] } })
    await settleHeld(CONTRIBUTOR, id, { title: chosen('Lime', 'Lime', 'Limes') })
    expect(await read(id)).toMatchObject({ typed: { title: 'Lime' }, held: null })
    expect(await codeOf(holdText(v7(), { title: put('x') }))).toBe('not-found')
  })

  it.each([
    ['a field that is not there', { 'no.such': put('x') }],
    ['who invented it', { invented: put('yes') }],
    ['where it was adapted from', { adaptedFrom: put('x@1') }],
    ['half a character', { title: put('\ud83e') }],
    ['what no database keeps', { title: put('a\0b') }],
    ['a book in one field', { title: put('x'.repeat(20_001)) }],
  ])('refuses %s, and nothing else that came with it is half kept', async (_, bad) => {
    const id = await begin()
    expect(await codeOf(saveDraft(CONTRIBUTOR, id, { summary: put('Good'), ...bad }))).toBe('invalid')
    expect((await read(id)).typed).toEqual({})
  })

  it('is listed with the last saved first, and goes when it is thrown away', async () => {
    const actor = { ...CONTRIBUTOR, key: 'lister' }
    const ids = [await begin({}, actor), await begin({ typed: { title: 'Second' } }, actor)]
    await saveDraft(actor, ids[0] ?? '', { title: put('First') })
    const first = await listDrafts('lister', { limit: 1 })
    expect(first.drafts.map(({ title }) => title)).toEqual(['First'])
    const second = await listDrafts('lister', { limit: 1, after: first.next ?? '' })
    expect([second.drafts.map(({ title }) => title), second.next]).toEqual([['Second'], null])
    await discardDraft(OTHER, ids[0] ?? '')
    await discardDraft(actor, ids[0] ?? '')
    expect((await listDrafts('lister')).drafts.map(({ title }) => title)).toEqual(['Second'])
  })
})

it('goes into a backup and comes back as it was, what waits with it', async () => {
  const id = await begin({ typed: { title: 'Lïme 🧱\n' } })
  await holdText(id, { title: put('Other', 'Lïme 🧱\n') })
  const before = await read(id)
  const rows = await db().$transaction(async (tx) => {
    const all: SideRow[] = []
    for await (const piece of readSideRows(tx, 'Draft')) all.push(...piece)
    return all.filter((row) => row.id === id)
  })
  await discardDraft(CONTRIBUTOR, id)
  await insertSideRows(db(), 'Draft', rows)
  expect(await read(id)).toEqual(before)
})

const REBASE = { version: 1, basedOn: 2, typed: {}, held: {} }

describe('two windows on one draft', () => {
  const first = put('North gable, repointed', 'North')
  const typing = async () => {
    const id = await begin({ typed: { title: 'North' } })
    await saveDraft(CONTRIBUTOR, id, { title: first })
    return id
  }

  it('hold one text of a window that goes on typing, not every step towards it', async () => {
    const id = await typing()
    for (const [was, is] of [
      ['North', 'S'],
      ['S', 'South'],
      ['South', 'South gable'],
    ] as const)
      expect(await saveDraft(CONTRIBUTOR, id, { title: { was, is } })).toMatchObject({
        conflicts: ['title'],
        waiting: true,
      })
    expect(await read(id)).toMatchObject({ typed: { title: first.is }, held: { title: ['South gable'] } })
  })

  it('go on saying that text waits while other fields are saved, until it was chosen', async () => {
    const id = await typing()
    await saveDraft(CONTRIBUTOR, id, { title: put('South', 'North') })
    expect(await saveDraft(CONTRIBUTOR, id, { summary: put('Dry.') })).toMatchObject({
      conflicts: [],
      waiting: true,
    })
    const settled = await settleHeld(CONTRIBUTOR, id, { title: chosen('South', first.is, 'South') })
    expect(settled).toMatchObject({ conflicts: [], waiting: false })
    expect((await read(id)).typed).toEqual({ title: 'South', summary: 'Dry.' })
  })

  it('hold nothing once both say the same', async () => {
    const id = await typing()
    await saveDraft(CONTRIBUTOR, id, { title: put('South', 'North') })
    expect(await saveDraft(CONTRIBUTOR, id, { title: put(first.is, 'South') })).toMatchObject({
      conflicts: [],
      waiting: false,
    })
  })

  it('lose nothing that came in while its writer chose', async () => {
    const id = await typing()
    await saveDraft(CONTRIBUTOR, id, { title: put('South', 'North') })
    const shown = [first.is, 'South']
    // A third window types, and the second goes on.
    await saveDraft(CONTRIBUTOR, id, { title: put('West', 'North') })
    await saveDraft(CONTRIBUTOR, id, { title: put('South side', 'South') })
    const kept = await settleHeld(CONTRIBUTOR, id, { title: chosen(first.is, ...shown) })
    expect(kept).toMatchObject({ conflicts: [], waiting: true })
    expect((await read(id)).held).toEqual({ title: ['South side', 'West'] })
    // What stands is typed on, and then another text is chosen beside what stood before.
    await saveDraft(CONTRIBUTOR, id, { title: put('North gable, 2019', first.is) })
    const refused = await settleHeld(CONTRIBUTOR, id, {
      title: chosen('West', first.is, 'South side', 'West'),
    })
    expect(refused.conflicts).toEqual(['title'])
    expect(await read(id)).toMatchObject({
      typed: { title: 'North gable, 2019' },
      held: { title: ['South side', 'West'] },
    })
  })

  it('change no version where nothing changes', async () => {
    const id = await typing()
    const { version } = await read(id)
    expect(await saveDraft(CONTRIBUTOR, id, {})).toMatchObject({ version, waiting: false })
    expect(await saveDraft(CONTRIBUTOR, id, { title: first })).toMatchObject({ version })
  })

  it('never hold what the form worked out by itself', async () => {
    const id = await begin({ kind: 'case', typed: { 'works.0.title': 'North' } })
    await fillDraft(CONTRIBUTOR, id, { 'works.0.id': put('north') })
    await fillDraft(CONTRIBUTOR, id, { 'works.0.id': put('north-face'), 'mortars.0.id': put('core') })
    expect(await read(id)).toMatchObject({
      typed: { 'works.0.id': 'north', 'mortars.0.id': 'core' },
      held: null,
    })
  })

  it('keep what one types after the other sent, and put it beside a further version', async () => {
    const id = await begin({ typed: { title: 'North' } })
    await submitDraft(
      CONTRIBUTOR,
      { id, version: 1, slug: 'sent-while-typed', body: makeRecipe(), note: 'First.' },
      REFERENCES,
    )
    expect(await saveDraft(CONTRIBUTOR, id, { title: put('Nor'), summary: put('Seen late') })).toMatchObject({
      sent: true,
      waiting: true,
    })
    const late = { title: put('North gable', 'Nor'), 'entry.slug': put('mine'), 'rights.photos': put('yes') }
    await holdText(id, late)
    const sent = await read(id)
    expect(sent).toMatchObject({ typed: { title: 'North' }, held: { title: ['North gable'] } })
    expect(await codeOf(settleHeld(OTHER, id, { title: chosen('North', 'North', 'North gable') }))).toBe(
      'not-found',
    )
    const choice = { title: chosen('North gable', 'North', 'North gable') }
    expect((await settleHeld(CONTRIBUTOR, id, choice)).conflicts).toEqual(['title'])
    expect((await read(id)).typed).toEqual({ title: 'North' })
    const further = { slug: 'sent-while-typed', basedOn: 1, typed: sent.typed, late: id }
    const taken = await begin(further, OTHER)
    expect((await read(taken, OTHER)).held).toBeNull()
    const next = await begin(further)
    expect(await read(next)).toMatchObject({
      typed: { title: 'North' },
      held: { title: ['North gable'], summary: ['Seen late'], 'rights.photos': ['yes'] },
    })
    // An address has no field in a further version: it stays where it can be read.
    expect((await read(next)).held).not.toHaveProperty('entry.slug')
    expect((await read(id)).held).toEqual({ 'entry.slug': ['mine'] })
    await settleHeld(CONTRIBUTOR, id, { 'entry.slug': chosen('', '', 'mine') })
    expect((await read(id)).held).toBeNull()
  })
})

describe('sending a draft', () => {
  const send = (id: string, over: object = {}) =>
    submitDraft(
      CONTRIBUTOR,
      { id, version: 1, slug: 'sent-recipe', body: makeRecipe(), note: 'First version.', ...over },
      REFERENCES,
    )

  it('records one revision, however often it is sent, and the draft is closed', async () => {
    const id = await begin()
    const [one, two] = await Promise.all([codeOf(send(id)), codeOf(send(id))])
    expect([one, two].sort()).toEqual(['conflict', 'done'])
    expect(await db().revision.count({ where: { entry: { slug: 'sent-recipe' } } })).toBe(1)
    const { submittedRevisionId } = await read(id)
    expect(await sentAs(submittedRevisionId ?? '')).toMatchObject({ slug: 'sent-recipe', number: 1 })
    expect(await codeOf(rebaseDraft(CONTRIBUTOR, { ...REBASE, id }))).toBe('conflict')
    await discardDraft(CONTRIBUTOR, id)
    expect(await ownDraft(CONTRIBUTOR.key, id)).not.toBeNull()
  })

  it('sends nothing that its writer has not seen', async () => {
    const id = await begin()
    await saveDraft(CONTRIBUTOR, id, { title: put('Changed elsewhere') })
    expect(await codeOf(send(id, { slug: 'unseen' }))).toBe('conflict')
    expect(await db().entry.count({ where: { slug: 'unseen' } })).toBe(0)
  })

  it('tells beforehand of what it points at and of an address that is taken', async () => {
    await submit(OTHER, makeSubmission({ slug: 'taken-address' }), REFERENCES)
    const draft = await read(await begin())
    const body = makeRecipe({ sources: [{ source: 'no-such-book' }] })
    expect(await draftFaults(draft, { slug: 'taken-address', body }, REFERENCES)).toEqual([
      { field: 'sources.0.source', code: 'unknown', value: 'no-such-book' },
      { field: 'entry.slug', code: 'taken', value: 'taken-address' },
    ])
  })

  it('leads to both when another came between, and goes through once brought together', async () => {
    await publish('recipe', 'shared', makeRecipe())
    const id = await begin({ slug: 'shared', basedOn: 1 })
    await submit(
      OTHER,
      makeSubmission({ slug: 'shared', basedOn: 1, body: makeRecipe({ title: 'Theirs' }) }),
      REFERENCES,
    )
    await expect(send(id)).rejects.toBeInstanceOf(EditConflict)
    const draft = await read(id)
    const newer = await newerRevision(draft)
    expect(newer).toMatchObject({ number: 2, body: { title: 'Theirs' }, base: makeRecipe() })
    const typed = { title: 'Together' }
    const together = { id, version: 1, basedOn: 2, typed, held: { period: 'not read' } }
    await rebaseDraft(CONTRIBUTOR, together)
    expect(await codeOf(rebaseDraft(CONTRIBUTOR, together))).toBe('conflict')
    expect(await read(id)).toMatchObject({ typed, basedOn: 2, held: { period: ['not read'] } })
    expect((await send(id, { version: 2 })).number).toBe(3)
  })

  it('starts from what was published, or from one’s own that was not', async () => {
    const sent = await submit(CONTRIBUTOR, makeSubmission({ slug: 'start-here' }), REFERENCES)
    expect(await revisionToStartFrom(OTHER.key, 'start-here', 1)).toBeNull()
    expect(await revisionToStartFrom(CONTRIBUTOR.key, 'start-here', 1)).toMatchObject({ mine: true })
    await decide(REVIEWER, verdictOn(sent))
    expect(await revisionToStartFrom(OTHER.key, 'start-here', null)).toMatchObject({
      kind: 'recipe',
      number: 1,
      mine: false,
    })
    expect(await revisionToStartFrom(OTHER.key, 'Not a slug', null)).toBeNull()
  })
})
