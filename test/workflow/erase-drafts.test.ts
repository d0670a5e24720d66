import { v4, v7 } from 'uuid'
import { describe, expect, it } from 'vitest'
import { GUEST, type Member } from '#lib/access/actor.ts'
import { db } from '#lib/db/client.ts'
import { noticesFor } from '#lib/db/notices.ts'
import { entryHead, versionOf, versionsOf } from '#lib/db/versions.ts'
import { decide } from '#lib/workflow/decide.ts'
import { beginDraft } from '#lib/workflow/draft-begin.ts'
import { holdText, saveDraft } from '#lib/workflow/draft-save.ts'
import { submitDraft } from '#lib/workflow/draft-submit.ts'
import { eraseBody } from '#lib/workflow/erase.ts'
import { submit } from '#lib/workflow/submit.ts'
import {
  CONTRIBUTOR,
  makeRecipe,
  makeSubmission,
  OTHER,
  publish,
  REFERENCES,
  REVIEWER,
  STEWARD,
  verdictOn,
} from '../support/make.ts'

const NAMED = 'Mixed for the house of somebody by the ford.'
const erase = (slug: string, number = 1) =>
  eraseBody(STEWARD, { key: v4(), slug, number, ground: 'personal-data', words: 'It named an owner.' })

async function begin(actor: Member, over: Partial<Parameters<typeof beginDraft>[1]>): Promise<string> {
  const start = { kind: 'recipe' as const, slug: null, basedOn: null, adaptedFrom: null, typed: {} }
  return (await beginDraft(actor, { id: v7(), ...start, ...over })).id
}
const draftOf = (id: string) => db().draft.findUniqueOrThrow({ where: { id } })
const everywhere = async () => JSON.stringify(await db().draft.findMany())

describe('eraseBody(actor, erasure) and drafts', () => {
  it('takes all out of the draft that the version was sent from, and out of what waits beside it', async () => {
    const id = await begin(CONTRIBUTOR, { typed: { title: 'Lime', summary: NAMED } })
    await holdText(id, { summary: { was: '', is: `${NAMED} Twice.` } })
    const { version } = await draftOf(id)
    const body = makeRecipe({ summary: NAMED })
    const ready = { id, version, slug: 'sent-draft', body, note: 'First.' }
    const sent = await submitDraft(CONTRIBUTOR, ready, REFERENCES)
    expect(await everywhere()).toContain(NAMED)
    await erase('sent-draft')
    expect(await everywhere()).not.toContain(NAMED)
    expect(await draftOf(id)).toMatchObject({ typed: {}, held: null, submittedRevisionId: sent.revisionId })
  })

  it('takes out of open drafts what the version had told, and leaves what their writers added', async () => {
    await publish('recipe', 'named-recipe', makeRecipe({ summary: NAMED }))
    await publish('recipe', 'named-recipe', makeRecipe({ summary: 'For a wall by the ford.' }), 1)
    const [begun, adapted, returned, later] = [
      await begin(OTHER, {
        slug: 'named-recipe',
        basedOn: 1,
        typed: { title: 'Lime and pit sand', summary: `${NAMED} Corrected.`, mixing: 'In a tub.' },
      }),
      await begin(OTHER, { adaptedFrom: 'named-recipe@1', typed: { summary: NAMED, 'entry.note': 'Mine.' } }),
      await begin(OTHER, {
        slug: 'named-recipe',
        basedOn: 2,
        typed: { title: 'Lime and pit sand', summary: NAMED },
      }),
      await begin(OTHER, { slug: 'named-recipe', basedOn: 2, typed: { summary: 'For a wall by the ford.' } }),
    ]
    await holdText(later, { summary: { was: '', is: `Once more: ${NAMED}` } })
    await erase('named-recipe')
    expect(await everywhere()).not.toContain('somebody')
    expect((await draftOf(begun)).typed).toEqual({ mixing: 'In a tub.' })
    expect((await draftOf(adapted)).typed).toEqual({ 'entry.note': 'Mine.' })
    expect((await draftOf(returned)).typed).toEqual({ title: 'Lime and pit sand' })
    expect(await draftOf(later)).toMatchObject({ typed: { summary: 'For a wall by the ford.' }, held: null })
    // What their page still shows does not overwrite what is there now.
    const again = { summary: { was: `${NAMED} Corrected.`, is: 'A wall.' } }
    expect((await saveDraft(OTHER, begun, again)).conflicts).toEqual(['summary'])
  })

  it('takes it out of what came in for a draft once that was sent', async () => {
    const id = await begin(CONTRIBUTOR, { typed: { title: 'Lime' } })
    const ready = { id, version: 1, slug: 'late-text', body: makeRecipe(), note: 'First.' }
    await submitDraft(CONTRIBUTOR, ready, REFERENCES)
    await publish('recipe', 'late-text', makeRecipe({ summary: NAMED }), 1)
    const late = { summary: { was: '', is: `${NAMED} Late.` }, period: { was: '', is: '1890s' } }
    await saveDraft(CONTRIBUTOR, id, late)
    await erase('late-text', 2)
    expect(await draftOf(id)).toMatchObject({ typed: { title: 'Lime' }, held: { period: ['1890s'] } })
  })

  it('leaves drafts of other entries alone', async () => {
    await publish('recipe', 'alone', makeRecipe({ summary: NAMED }))
    const id = await begin(OTHER, { typed: { summary: NAMED } })
    await erase('alone')
    expect((await draftOf(id)).typed).toEqual({ summary: NAMED })
    await db().draft.delete({ where: { id } })
  })

  it('lets nobody begin from it after, whatever was read before', async () => {
    await publish('recipe', 'begun-late', makeRecipe({ summary: NAMED }))
    const id = v7()
    const start = { id, kind: 'recipe' as const, slug: null, basedOn: null, typed: { summary: NAMED } }
    await erase('begun-late')
    for (const from of [
      { adaptedFrom: 'begun-late@1' },
      { adaptedFrom: null, slug: 'begun-late', basedOn: 1 },
    ])
      await expect(beginDraft(OTHER, { ...start, ...from })).rejects.toMatchObject({ code: 'conflict' })
    expect(await db().draft.count({ where: { id } })).toBe(0)
  })

  it('tells the author and whoever lost text', async () => {
    await publish('recipe', 'told', makeRecipe({ summary: NAMED }))
    const writer = { ...OTHER, key: 'mason-told' }
    await begin(writer, { slug: 'told', basedOn: 1, typed: { summary: NAMED } })
    await erase('told')
    for (const { key } of [CONTRIBUTOR, writer])
      expect((await noticesFor(key)).notices[0]).toMatchObject({ what: 'erased', slug: 'told', number: 1 })
  })
})

describe('the versions of an erased revision', () => {
  it('show to nobody its note and what reviewers said of it, and still who erased it and why', async () => {
    const write = makeSubmission({ slug: 'quoted', note: `Says: ${NAMED}` })
    const sent = await submit(CONTRIBUTOR, write, REFERENCES)
    await decide(REVIEWER, {
      ...verdictOn(sent),
      words: `Read: ${NAMED}`,
      fields: [{ field: 'summary', words: NAMED }],
    })
    await erase('quoted')
    for (const actor of [GUEST, CONTRIBUTOR, STEWARD]) {
      const head = await entryHead(actor, 'quoted')
      if (head === null) throw new Error('not there')
      const told = [await versionsOf(actor, head), await versionOf(actor, head, 1)]
      expect(JSON.stringify(told)).not.toContain('somebody')
      expect(JSON.stringify(told)).toContain('It named an owner.')
    }
  })
})

describe('beginDraft(actor, begin)', () => {
  it('answers a repeated id with the first draft also when there are as many as one may have', async () => {
    const many = { ...OTHER, key: 'mason-of-many' }
    const first = await begin(many, { typed: { title: 'The first' } })
    const now = new Date()
    await db().draft.createMany({
      data: Array.from({ length: 299 }, () => ({
        id: v7(),
        ownerKey: many.key,
        kind: 'recipe' as const,
        typed: {},
        createdAt: now,
        savedAt: now,
      })),
    })
    expect(await begin(many, { id: first, typed: { title: 'Again' } })).toBe(first)
    expect((await draftOf(first)).typed).toEqual({ title: 'The first' })
    await expect(begin(many, {})).rejects.toMatchObject({ code: 'conflict' })
    await expect(begin(OTHER, { id: first })).rejects.toMatchObject({ code: 'conflict' })
  })
})
