import { v4 } from 'uuid'
import { beforeAll, describe, expect, it } from 'vitest'
import { db } from '#lib/db/client.ts'
import { type Selected, selectWorks, sharedVisitsOf, sizeOf } from '#lib/search/works.ts'
import { forgetWorks } from '#lib/search/works-known.ts'
import { answerDispute, dispute } from '#lib/workflow/dispute.ts'
import { eraseBody } from '#lib/workflow/erase.ts'
import { rebuild } from '#lib/workflow/rebuild.ts'
import { restore, withdraw } from '#lib/workflow/withdraw.ts'
import {
  makeCase,
  makeRecipe,
  makeVisit,
  makeWork,
  OTHER,
  publish,
  REVIEWER,
  STEWARD,
} from '#test/support/make.ts'

const FILTERS = [{}, { recipe: ['putty'] }, { country: ['EE'] }, { binder: ['lime-fat'], country: ['SI'] }]

/** What this process remembers under each filter. */
const remembered = () =>
  selectWorks(
    FILTERS.map((filter) => ({ filter, asOf: '2024-01-01' })),
    (all: readonly Selected[]) =>
      all.map((one) => {
        const { works, walls, watchedDays } = sizeOf(one)
        return { works, walls, watchedDays, shared: sharedVisitsOf(one).length, leftOut: one.leftOut.length }
      }),
  )

/** The same from the rows themselves. */
async function stored() {
  const cases = new Map((await db().caseIndex.findMany()).map((one) => [one.entryId, one]))
  const shared = await db().visitIndex.findMany({ where: { others: { isEmpty: false } } })
  const rows = (await db().outcomeIndex.findMany()).filter(
    ({ caseEntryId }) => cases.get(caseEntryId)?.disputed === false,
  )
  return FILTERS.map(({ recipe, country, binder }) => {
    const chosen = rows.filter(
      (row) =>
        (recipe?.includes(row.recipe ?? '') ?? true) &&
        (country?.includes(cases.get(row.caseEntryId)?.country ?? '') ?? true) &&
        (binder?.some((one) => row.materials.includes(one)) ?? true),
    )
    const told = chosen.filter(({ leftOut }) => leftOut === null)
    return {
      works: told.length,
      walls: new Set(told.map(({ caseEntryId }) => caseEntryId)).size,
      watchedDays: told.reduce((sum, one) => sum + one.watchedDays, 0),
      shared: shared.filter((visit) =>
        chosen.some((one) => one.caseEntryId === visit.caseEntryId && one.work === visit.work),
      ).length,
      leftOut: chosen.length - told.length,
    }
  })
}

async function publishWall(slug: string, country: string) {
  const works = [
    makeWork({ recipe: 'putty@1', started: '2010', finished: '2010' }),
    makeWork({ id: 'bare', started: '2010', finished: '2010' }),
  ]
  await publish('case', slug, makeCase({ title: slug, place: { country, region: 'r' }, works }))
  await publish('visit', `${slug}-first`, makeVisit({ case: slug, on: '2010-12-31' }))
}

beforeAll(async () => {
  await publish('recipe', 'putty', makeRecipe({ title: 'Plain putty mortar' }))
  for (const [slug, country] of [
    ['mill', 'EE'],
    ['byre', 'SI'],
    ['barn', 'SI'],
  ] as const)
    await publishWall(slug, country)
})

describe('works that are remembered', () => {
  it('are those of the record after everything that can happen to it', async () => {
    const same = async () => {
      const now = await remembered()
      expect(now).toEqual(await stored())
      return now[0]
    }
    expect(await same()).toMatchObject({ works: 0, leftOut: 6 })
    const later = makeVisit({ case: 'mill', on: '2015-06-01', baseline: false })
    await publish('visit', 'mill-later', later)
    expect(await same()).toMatchObject({ works: 1 })
    // The case's words and facets say the same after this one.
    const others = [{ who: 'surveyor', joint: 'worn', unit: 'sound', damp: 'dry' } as const]
    await publish('visit', 'mill-later', { ...later, on: '2015-06-02', others }, 1)
    expect(await same()).toMatchObject({ works: 1, shared: 1 })
    await publishWall('shed', 'EE')
    expect(await same()).toMatchObject({ leftOut: 7 })
    await dispute(OTHER, { key: v4(), slug: 'mill', words: 'It was never repointed.' })
    expect(await same()).toMatchObject({ works: 0 })
    await answerDispute(REVIEWER, { key: v4(), slug: 'mill', outcome: 'settle', read: 2, words: 'It was.' })
    expect(await same()).toMatchObject({ works: 1 })
    await withdraw(STEWARD, { key: v4(), slug: 'mill-later', words: 'A slip.' })
    expect(await same()).toMatchObject({ works: 0 })
    await restore(STEWARD, { key: v4(), slug: 'mill-later', words: 'No slip.' })
    expect(await same()).toMatchObject({ works: 1 })
    await withdraw(STEWARD, { key: v4(), slug: 'mill', words: 'The owner asked.' })
    expect(await same()).toMatchObject({ works: 0, leftOut: 6 })
    await eraseBody(STEWARD, {
      key: v4(),
      slug: 'shed',
      number: 1,
      ground: 'personal-data',
      words: 'A name.',
    })
    expect(await same()).toMatchObject({ leftOut: 4 })
    await rebuild()
    expect(await same()).toMatchObject({ leftOut: 4 })
  })

  it('are the same to a server that has just started', async () => {
    const before = await remembered()
    forgetWorks()
    expect(await remembered()).toEqual(before)
  })
})
