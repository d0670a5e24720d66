import { v4 } from 'uuid'
import { beforeAll, describe, expect, it } from 'vitest'
import { GUEST, SYSTEM } from '#lib/access/actor.ts'
import { db } from '#lib/db/client.ts'
import { digestOf, revisionDigest } from '#lib/entry/digest.ts'
import { Refusal } from '#lib/errors.ts'
import { EditConflict, type Submission, submit } from '#lib/workflow/submit.ts'
import {
  CONTRIBUTOR,
  makeCase,
  makeRecipe,
  makeSubmission,
  makeVisit,
  makeWork,
  OTHER,
  publish,
  REFERENCES,
} from '../support/make.ts'

const send = (over: Partial<Submission> = {}, actor = CONTRIBUTOR) =>
  submit(actor, makeSubmission(over), REFERENCES)
const refusal = async (write: Promise<unknown>): Promise<Refusal> => {
  const error = await write.then(
    () => null,
    (thrown: unknown) => thrown,
  )
  if (error instanceof Refusal) return error
  throw new Error('it was not refused', { cause: error })
}

describe('submit(actor, submission)', () => {
  it('records a new entry as revision 1, submitted, with a digest over all it says', async () => {
    const { revisionId, number, digest, repeated, entryId } = await send({ slug: 'first' })
    expect([number, repeated]).toEqual([1, false])
    const stored = await db().revision.findUniqueOrThrow({ where: { id: revisionId } })
    expect(stored).toMatchObject({
      state: 'submitted',
      body: makeRecipe(),
      basedOn: null,
      authorKey: 'mason-1',
    })
    const bodyDigest = digestOf(makeRecipe())
    expect(digest).toBe(revisionDigest({ ...stored, entryId, bodyDigest, parentDigest: null }))
  })

  it('chains a further revision to the one before', async () => {
    const first = await send({ slug: 'chained' })
    const second = await send(
      { slug: 'chained', basedOn: 1, body: makeRecipe({ title: 'Lime, less sand' }) },
      OTHER,
    )
    const stored = await db().revision.findUniqueOrThrow({ where: { id: second.revisionId } })
    expect(second.number).toBe(2)
    expect(second.digest).toBe(revisionDigest({ ...stored, parentDigest: first.digest }))
  })

  it('answers a repeated key with the first result and writes nothing more', async () => {
    const write = makeSubmission({ slug: 'repeated' })
    const first = await submit(CONTRIBUTOR, write, REFERENCES)
    expect(await submit(CONTRIBUTOR, write, REFERENCES)).toEqual({ ...first, repeated: true })
    const next = makeSubmission({ slug: 'repeated', basedOn: 1 })
    const second = await submit(CONTRIBUTOR, next, REFERENCES)
    expect(await submit(CONTRIBUTOR, next, REFERENCES)).toEqual({ ...second, repeated: true })
    expect(await submit(CONTRIBUTOR, write, REFERENCES)).toEqual({ ...first, repeated: true })
    expect(await db().revision.count({ where: { entryId: first.entryId } })).toBe(2)
  })

  it("refuses a key that belongs to somebody else's write", async () => {
    const write = makeSubmission({ slug: 'keyed' })
    await submit(CONTRIBUTOR, write, REFERENCES)
    expect((await refusal(submit(OTHER, write, REFERENCES))).code).toBe('conflict')
  })

  it('refuses an edit of an older revision with both bodies, and overwrites nothing', async () => {
    await send({ slug: 'contended' })
    const theirs = makeRecipe({ title: 'Theirs' })
    const yours = makeRecipe({ title: 'Yours' })
    await send({ slug: 'contended', basedOn: 1, body: theirs, note: 'Their change.' }, OTHER)
    const error = await refusal(send({ slug: 'contended', basedOn: 1, body: yours, note: 'My change.' }))
    expect(error).toBeInstanceOf(EditConflict)
    expect(error).toMatchObject({
      code: 'conflict',
      theirs: { number: 2, body: theirs, note: 'Their change.' },
      yours: { basedOn: 1, body: yours, note: 'My change.' },
    })
    expect(await db().revision.count({ where: { entry: { slug: 'contended' } } })).toBe(2)
  })

  it('refuses those who may not write', async () => {
    for (const actor of [GUEST, SYSTEM])
      expect((await refusal(submit(actor, makeSubmission(), REFERENCES))).code).toBe('forbidden')
  })

  it('refuses an address that is taken, a revision of nothing, and a start that never was', async () => {
    await send({ slug: 'taken' })
    expect(await refusal(send({ slug: 'taken' }))).toMatchObject({
      code: 'conflict',
      faults: [{ field: 'slug', code: 'taken' }],
    })
    expect((await refusal(send({ slug: 'nowhere', basedOn: 1 }))).code).toBe('not-found')
    expect((await refusal(send({ slug: 'taken', basedOn: 2 }))).code).toBe('not-found')
    expect((await refusal(send({ slug: 'taken', basedOn: 1, kind: 'case', body: makeCase() }))).code).toBe(
      'not-found',
    )
  })

  it('names every field of the write and of the body that cannot be read', async () => {
    const write = makeSubmission({ key: 'no-uuid', slug: 'Not A Slug', note: ' ' })
    expect((await refusal(submit(CONTRIBUTOR, write, REFERENCES))).faults.map(({ field }) => field)).toEqual([
      'key',
      'slug',
      'note',
    ])
    const body = { ...makeRecipe(), family: 'magic', uses: [] }
    expect((await refusal(send({ body }))).faults).toEqual([
      { field: 'family', code: 'not-offered' },
      { field: 'uses', code: 'too-small', limit: 1 },
    ])
  })
})

describe('submit refuses what points at nothing, field by field', () => {
  const unknown = (field: string, value: string) => ({ field, code: 'unknown', value })

  beforeAll(async () => {
    await publish('recipe', 'known-recipe', makeRecipe())
    await publish('case', 'barn-wall', makeCase())
    await send({ slug: 'only-submitted' })
  })

  it('in a recipe', async () => {
    const [lime] = makeRecipe().ingredients
    const body = makeRecipe({
      ingredients: [{ ...lime, material: 'fairy-dust' } as never],
      units: ['limestone', 'cheese'],
      follows: ['old-table#first', 'old-table#ninth'],
      sources: [{ source: 'no-book' }],
      adaptedFrom: 'only-submitted@1',
    })
    expect((await refusal(send({ slug: 'lost', body }))).faults).toEqual([
      unknown('ingredients.0.material', 'fairy-dust'),
      unknown('units.1', 'cheese'),
      unknown('follows.1', 'old-table#ninth'),
      unknown('sources.0.source', 'no-book'),
      unknown('adaptedFrom', 'only-submitted@1'),
    ])
  })

  it('in a case', async () => {
    const mixed = {
      ingredients: [
        { material: 'fairy-dust', parts: { low: 1, high: 1 }, by: 'volume', state: 'dry' },
      ] as never,
    }
    const body = makeCase({
      fabric: { units: [{ unit: 'cheese' }], wall: 'ashlar' },
      works: [
        makeWork({ recipe: 'known-recipe@1' }),
        makeWork({ recipe: 'known-recipe@2', mortar: 'no-mortar', mixed }),
      ],
      recordedOn: '2999-01-01',
    })
    expect((await refusal(send({ kind: 'case', slug: 'lost', body }))).faults).toEqual([
      unknown('fabric.units.0.unit', 'cheese'),
      unknown('works.1.mixed.ingredients.0.material', 'fairy-dust'),
      { field: 'works.1.id', code: 'repeated', value: 'repointing' },
      unknown('works.1.mortar', 'no-mortar'),
      { field: 'recordedOn', code: 'in-the-future', value: '2999-01-01' },
      unknown('works.1.recipe', 'known-recipe@2'),
    ])
  })

  it('in a visit', async () => {
    const faults = async (over: object) =>
      (await refusal(send({ kind: 'visit', slug: 'lost', body: makeVisit(over) }))).faults
    expect(await faults({ case: 'no-wall' })).toEqual([
      { field: 'case', code: 'unknown-case', value: 'no-wall' },
    ])
    expect(await faults({ work: 'no-work' })).toEqual([unknown('work', 'no-work')])
    expect(await faults({ on: '2010-04-30' })).toEqual([
      { field: 'on', code: 'before-start', value: '2010-04-30', limit: '2010-05' },
    ])
    expect(await faults({ on: '2999-01-01' })).toEqual([
      { field: 'on', code: 'in-the-future', value: '2999-01-01' },
    ])
  })

  it('when a case would drop a work that visits tell of', async () => {
    await publish('visit', `barn-wall-${v4()}`, makeVisit())
    const body = makeCase({ works: [makeWork({ id: 'other-work' })] })
    expect((await refusal(send({ kind: 'case', slug: 'barn-wall', basedOn: 1, body }))).faults).toEqual([
      { field: 'works', code: 'work-has-visits', value: 'repointing' },
    ])
  })
})
