import { v4 } from 'uuid'
import { beforeAll, describe, expect, it } from 'vitest'
import { caseBySlug, listCases } from '#lib/db/cases.ts'
import { citing } from '#lib/db/citations.ts'
import { closeDb, db } from '#lib/db/client.ts'
import { addressState } from '#lib/db/entries.ts'
import { ping } from '#lib/db/health.ts'
import { asItStands, listRecipes, recipeBySlug } from '#lib/db/recipes.ts'
import { revisionNames } from '#lib/db/revisions.ts'
import { submit } from '#lib/workflow/submit.ts'
import { restore, withdraw } from '#lib/workflow/withdraw.ts'
import {
  CONTRIBUTOR,
  makeCase,
  makeRecipe,
  makeSubmission,
  makeVisit,
  makeWork,
  publish,
  REFERENCES,
  STEWARD,
} from '../support/make.ts'

beforeAll(async () => {
  await publish(
    'recipe',
    'mixed-sand',
    makeRecipe({ title: 'Élite sand', units: [], follows: [], sources: [] }),
  )
  await publish('recipe', 'mixed-sand', makeRecipe({ title: 'Élite sand', units: [] }), 1)
  await publish('recipe', 'zinc', makeRecipe({ title: 'zinc', adaptedFrom: 'mixed-sand@1' }))
  await publish('recipe', 'fine', makeRecipe({ title: 'Fine', sources: [{ source: 'b-book' }] }))
  const works = [
    makeWork({ id: 'north', finished: '2010-06', recipe: 'mixed-sand@1' }),
    makeWork({ id: 'south', finished: '2010-06', recipe: 'mixed-sand@2', use: 'floor' }),
  ]
  await publish(
    'case',
    'barn-wall',
    makeCase({ works, fabric: { units: [{ unit: 'granite' }], wall: 'ashlar' } }),
  )
  await publish('visit', 'v1', makeVisit({ work: 'north', on: '2010-08-01' }))
  await publish('visit', 'v2', makeVisit({ work: 'north', on: '2015-08-01', baseline: false, joint: 'worn' }))
  await publish('visit', 'v3', makeVisit({ work: 'south', on: '2013-06-30', baseline: false, damp: 'wet' }))
})

describe('what publishing indexes', () => {
  it('counts years from the baseline, or from the last day a work can have ended on', async () => {
    const { cases } = await listCases()
    expect(cases).toMatchObject([
      {
        slug: 'barn-wall',
        visits: 3,
        yearsWatched: 5,
        latest: { on: '2015-08-01', joint: 'worn', damp: 'dry' },
      },
    ])
    await publish('visit', 'v4', makeVisit({ work: 'south', on: '2016-06-30', baseline: false }))
    expect((await listCases()).cases).toMatchObject([
      { visits: 4, yearsWatched: 6, latest: { on: '2016-06-30' } },
    ])
  })

  it('gives a recipe the units, the number and the longest watch of the cases that used it', async () => {
    const [elite, fine] = (await listRecipes()).recipes
    expect(elite).toMatchObject({ slug: 'mixed-sand', units: ['granite'], cases: 1, longestYears: 6 })
    expect(fine).toMatchObject({ slug: 'fine', units: ['limestone'], cases: 0, longestYears: null })
    expect((await listRecipes({ unit: 'granite' })).recipes.map(({ slug }) => slug)).toEqual(['mixed-sand'])
    expect((await listCases({ recipe: ['mixed-sand'] })).cases.map(({ slug }) => slug)).toEqual(['barn-wall'])
  })

  it('sorts titles alike on every server, accents and capitals aside', async () => {
    expect((await listRecipes()).recipes.map(({ title }) => title)).toEqual(['Élite sand', 'Fine', 'zinc'])
  })

  it('follows a case that stops using a recipe, and one that is withdrawn', async () => {
    await publish('case', 'brief', makeCase({ works: [makeWork({ recipe: 'fine@1' })] }))
    expect((await listRecipes()).recipes[1]).toMatchObject({ slug: 'fine', cases: 1 })
    await publish('case', 'brief', makeCase({ works: [makeWork()] }), 1)
    expect((await listRecipes()).recipes[1]).toMatchObject({ slug: 'fine', cases: 0 })
    await publish('case', 'brief', makeCase({ works: [makeWork({ recipe: 'fine@1' })] }), 2)
    await withdraw(STEWARD, { key: v4(), slug: 'brief', words: 'The owner asked.' })
    expect((await listRecipes()).recipes[1]).toMatchObject({ slug: 'fine', cases: 0 })
  })

  it('drops a visit that is withdrawn', async () => {
    await publish('case', 'watched', makeCase())
    await publish('visit', 'w1', makeVisit({ case: 'watched' }))
    await withdraw(STEWARD, { key: v4(), slug: 'w1', words: 'Another wall was meant.' })
    expect(await caseBySlug('watched')).toMatchObject({ visits: [] })
    expect((await db().caseIndex.findUniqueOrThrow({ where: { slug: 'watched' } })).visits).toBe(0)
  })
})

describe('citing(target)', () => {
  it('tells which published recipes cite a source, and where in it', async () => {
    expect(await citing({ source: 'a-book' })).toEqual([
      { kind: 'recipe', slug: 'mixed-sand', title: 'Élite sand', locator: 'p. 12', invented: true },
      { kind: 'recipe', slug: 'zinc', title: 'zinc', locator: 'p. 12', invented: true },
    ])
    expect(await citing({ source: 'b-book' })).toEqual([
      { kind: 'recipe', slug: 'fine', title: 'Fine', locator: null, invented: true },
    ])
    expect(await citing({ source: 'no-book' })).toEqual([])
  })

  it('tells which published recipes follow a row', async () => {
    expect((await citing({ row: 'old-table#first' })).map(({ slug }) => slug)).toEqual([
      'fine',
      'mixed-sand',
      'zinc',
    ])
    expect(await citing({ row: 'old-table#second' })).toEqual([])
  })
})

describe('recipeBySlug(slug, revision) and caseBySlug(slug, revision)', () => {
  it('give all that a page needs to cite what it shows', async () => {
    const found = await recipeBySlug('mixed-sand', 1)
    const stored = await db().revision.findFirstOrThrow({
      where: { entry: { slug: 'mixed-sand' }, number: 1 },
    })
    const { at } = await db().decision.findFirstOrThrow({ where: { revisionId: stored.id } })
    expect(found).toEqual({
      slug: 'mixed-sand',
      entryId: stored.entryId,
      revision: 1,
      latest: 2,
      body: stored.body,
      author: 'mason-1',
      submittedAt: stored.createdAt,
      publishedAt: at,
      note: 'First entry.',
      digest: stored.digest,
      standing: 'in-use',
      standingReason: undefined,
      standingFrom: 2,
    })
  })

  it('gives an earlier revision the graver standing of the one that took its place', async () => {
    const grave = { standing: 'known-hazard', standingReason: 'It broke the stone.' } as const
    await publish('recipe', 'doubtful', makeRecipe())
    await publish('recipe', 'doubtful', makeRecipe(grave), 1)
    const first = await recipeBySlug('doubtful', 1)
    expect(first).toMatchObject({ body: { standing: 'in-use' }, ...grave })
    expect(first && asItStands(first)).toEqual({ ...makeRecipe(), ...grave })
    await publish('recipe', 'doubtful', makeRecipe(), 2)
    expect(await recipeBySlug('doubtful', 2)).toMatchObject(grave)
    expect(await recipeBySlug('doubtful')).toMatchObject({ standing: 'in-use' })
  })

  it('gives nothing for a revision that is not there, however large its number', async () => {
    expect(await recipeBySlug('mixed-sand', 9)).toBeNull()
    expect(await recipeBySlug('mixed-sand', Number.MAX_SAFE_INTEGER)).toBeNull()
  })

  it('give visits by work, then by date', async () => {
    const found = await caseBySlug('barn-wall')
    expect(found?.visits.map(({ slug }) => slug)).toEqual(['v1', 'v2', 'v3', 'v4'])
  })

  it('give nothing for an address of another kind or of nothing', async () => {
    expect(await recipeBySlug('barn-wall')).toBeNull()
    expect(await caseBySlug('mixed-sand')).toBeNull()
    expect(await caseBySlug('v1')).toBeNull()
    expect(await caseBySlug('nowhere')).toBeNull()
    expect(await caseBySlug('barn-wall\u0000')).toBeNull()
  })
})

describe('addressState(kind, slug, revision)', () => {
  const absent = { state: 'absent', latest: null }
  /** A revision that waits for its verdict. */
  const send = (slug: string, basedOn: number | null) =>
    submit(CONTRIBUTOR, makeSubmission({ slug, basedOn, body: makeRecipe({ title: 'Waiting' }) }), REFERENCES)

  it('is open for what is published, and for each revision that once was', async () => {
    expect(await addressState('recipe', 'mixed-sand')).toEqual({ state: 'open', latest: 2 })
    expect(await addressState('recipe', 'mixed-sand', 1)).toEqual({ state: 'open', latest: 2 })
    expect(await addressState('case', 'barn-wall', 1)).toEqual({ state: 'open', latest: 1 })
  })

  it('is absent for a revision that is not there or still waits, and names the newest', async () => {
    const missing = { state: 'absent', latest: 2 }
    expect(await addressState('recipe', 'mixed-sand', 9)).toEqual(missing)
    expect(await addressState('recipe', 'mixed-sand', Number.MAX_SAFE_INTEGER)).toEqual(missing)
    await send('mixed-sand', 2)
    expect(await addressState('recipe', 'mixed-sand', 3)).toEqual(missing)
    expect(await recipeBySlug('mixed-sand', 3)).toBeNull()
  })

  it('is absent for an entry never published, one of another kind, and what is no address', async () => {
    await send('waiting', null)
    expect(await addressState('recipe', 'waiting')).toEqual(absent)
    expect(await addressState('recipe', 'waiting', 1)).toEqual(absent)
    expect(await addressState('recipe', 'barn-wall')).toEqual(absent)
    expect(await addressState('case', 'v1')).toEqual(absent)
    expect(await addressState('case', 'nowhere')).toEqual(absent)
    expect(await addressState('case', 'barn-wall\u0000')).toEqual(absent)
  })

  it('is gone for a withdrawn entry at each of its revisions, and open again once it is restored', async () => {
    const order = { slug: 'shut', words: 'The owner asked.' }
    await publish('case', 'shut', makeCase())
    await withdraw(STEWARD, { key: v4(), ...order })
    for (const revision of [undefined, 1, 9])
      expect(await addressState('case', 'shut', revision)).toEqual({ state: 'gone', latest: null })
    expect(await addressState('recipe', 'shut')).toEqual(absent)
    await restore(STEWARD, { key: v4(), ...order })
    expect(await addressState('case', 'shut')).toEqual({ state: 'open', latest: 1 })
  })
})

describe('revisionNames(refs)', () => {
  it('names each revision that can be read, and none that was never published', async () => {
    const title = (await recipeBySlug('mixed-sand', 1))?.body.title
    expect(await revisionNames(['mixed-sand@1', 'mixed-sand@9', 'nowhere@1'])).toEqual(
      new Map([['mixed-sand@1', { title, method: 'putty' }]]),
    )
    expect(await revisionNames([])).toEqual(new Map())
  })
})

describe('ping()', () => {
  it('tells that the database answers, and that none does', async () => {
    expect(await ping()).toBe(true)
    await closeDb()
    const { DATABASE_URL } = process.env
    process.env.DATABASE_URL = 'postgres://putlog@127.0.0.1:9/putlog'
    expect(await ping()).toBe(false)
    await closeDb()
    process.env.DATABASE_URL = DATABASE_URL
    expect(await ping()).toBe(true)
  })
})
