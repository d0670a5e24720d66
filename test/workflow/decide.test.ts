import { v4 } from 'uuid'
import { describe, expect, it } from 'vitest'
import type { Member } from '#lib/access/actor.ts'
import { db } from '#lib/db/client.ts'
import { withdrawnEntry } from '#lib/db/entries.ts'
import { recipeBySlug } from '#lib/db/recipes.ts'
import { decide } from '#lib/workflow/decide.ts'
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
  REVIEWER,
  STEWARD,
  verdictOn,
} from '../support/make.ts'

const send = (slug: string, basedOn: number | null = null, actor: Member = CONTRIBUTOR) =>
  submit(
    actor,
    makeSubmission({ slug, basedOn, body: makeRecipe({ title: `After ${basedOn}` }) }),
    REFERENCES,
  )
const stateOf = async (slug: string, number: number) =>
  (await db().revision.findFirstOrThrow({ where: { entry: { slug }, number } })).state
const conflict = expect.objectContaining({ code: 'conflict' })

describe('decide(actor, judgement)', () => {
  it('publishes: the pointer moves, the former is superseded, and both can be read', async () => {
    await publish('recipe', 'moving', makeRecipe({ title: 'One' }))
    await publish('recipe', 'moving', makeRecipe({ title: 'Two' }), 1)
    expect([await stateOf('moving', 1), await stateOf('moving', 2)]).toEqual(['superseded', 'published'])
    expect(await recipeBySlug('moving')).toMatchObject({ revision: 2, latest: 2, body: { title: 'Two' } })
    expect(await recipeBySlug('moving', 1)).toMatchObject({ revision: 1, latest: 2, body: { title: 'One' } })
    expect(await recipeBySlug('moving', 3)).toBeNull()
  })

  it.each([
    ['return', 'returned'],
    ['decline', 'declined'],
  ] as const)('%ss, and nobody but the record keeps it', async (outcome, state) => {
    const submitted = await send(`judged-${outcome}`)
    await decide(REVIEWER, verdictOn(submitted, outcome))
    expect(await stateOf(submitted.slug, 1)).toBe(state)
    expect(await recipeBySlug(submitted.slug)).toBeNull()
    expect(await recipeBySlug(submitted.slug, 1)).toBeNull()
  })

  it('refuses what came apart while it waited: a work dropped and a visit to it, whichever is judged last', async () => {
    const other = makeCase({ works: [makeWork({ id: 'other-work' })] })
    const waiting = async (slug: string) => {
      await publish('case', slug, makeCase())
      return Promise.all([
        submit(CONTRIBUTOR, makeSubmission({ kind: 'case', slug, basedOn: 1, body: other }), REFERENCES),
        submit(
          CONTRIBUTOR,
          makeSubmission({ kind: 'visit', slug: `${slug}-visit`, body: makeVisit({ case: slug }) }),
          REFERENCES,
        ),
      ])
    }
    const [dropping, visiting] = await waiting('parted-one')
    await decide(REVIEWER, verdictOn(dropping))
    await expect(decide(REVIEWER, verdictOn(visiting))).rejects.toMatchObject({
      code: 'conflict',
      faults: [{ field: 'work', code: 'unknown', value: 'repointing' }],
    })
    expect((await decide(REVIEWER, verdictOn(visiting, 'return'))).outcome).toBe('return')
    const [dropped, visited] = await waiting('parted-two')
    await decide(REVIEWER, verdictOn(visited))
    await expect(decide(REVIEWER, verdictOn(dropped))).rejects.toMatchObject({
      code: 'conflict',
      faults: [{ field: 'works', code: 'work-has-visits', value: 'repointing' }],
    })
  })

  it('lets the author start again from what was returned', async () => {
    const submitted = await send('again')
    await decide(REVIEWER, verdictOn(submitted, 'return'))
    expect((await send('again', 1)).number).toBe(2)
  })

  it('refuses the author, whatever their roles, and those who do not review', async () => {
    const own = await send('own', null, REVIEWER)
    for (const actor of [REVIEWER, CONTRIBUTOR, STEWARD])
      await expect(decide(actor, verdictOn(own))).rejects.toMatchObject({ code: 'forbidden' })
    expect(await stateOf('own', 1)).toBe('submitted')
  })

  it('refuses a second verdict, and answers a repeated one with the first', async () => {
    const submitted = await send('judged-twice')
    const verdict = verdictOn(submitted)
    const first = await decide(REVIEWER, verdict)
    expect(await decide(REVIEWER, verdict)).toEqual({ ...first, repeated: true })
    await expect(decide(REVIEWER, verdictOn(submitted, 'decline'))).rejects.toThrow(conflict)
    expect(await db().decision.count({ where: { entry: { slug: 'judged-twice' } } })).toBe(1)
  })

  it('refuses to go back to an older revision than the published one', async () => {
    await send('backwards')
    await send('backwards', 1)
    await decide(REVIEWER, verdictOn({ slug: 'backwards', number: 2 }))
    await expect(decide(REVIEWER, verdictOn({ slug: 'backwards', number: 1 }))).rejects.toThrow(conflict)
  })

  it('refuses a revision that is not there and words that are none', async () => {
    await expect(decide(REVIEWER, verdictOn({ slug: 'nowhere', number: 1 }))).rejects.toMatchObject({
      code: 'not-found',
    })
    const verdict = { ...verdictOn(await send('wordless')), words: '  ' }
    await expect(decide(REVIEWER, verdict)).rejects.toMatchObject({
      faults: [{ field: 'words', code: 'too-small', limit: 1 }],
    })
  })

  it('lets one of two opposite verdicts stand when both come at once', async () => {
    for (let round = 0; round < 8; round++) {
      const submitted = await send(`raced-${round}`)
      const rival: Member = { kind: 'member', key: 'reviewer-2', roles: ['reviewer'] }
      const outcomes = await Promise.allSettled([
        decide(REVIEWER, verdictOn(submitted, 'publish')),
        decide(rival, verdictOn(submitted, 'decline')),
      ])
      expect(outcomes.map(({ status }) => status).sort()).toEqual(['fulfilled', 'rejected'])
      const lost = outcomes.find((outcome) => outcome.status === 'rejected')
      expect(lost?.reason).toMatchObject({ code: 'conflict' })
      expect(await db().decision.count({ where: { entryId: submitted.entryId } })).toBe(1)
      const stands = outcomes[0]?.status === 'fulfilled'
      expect((await recipeBySlug(submitted.slug)) !== null).toBe(stands)
      expect(await db().recipeIndex.count({ where: { entryId: submitted.entryId } })).toBe(stands ? 1 : 0)
    }
  })
})

describe('withdraw(actor, order) and restore(actor, order)', () => {
  const order = (slug: string) => ({ key: v4(), slug, words: 'The owner asked.' })

  it('takes an entry down with its reason and puts it back as it was', async () => {
    await publish('recipe', 'taken-down', makeRecipe({ title: 'Gone' }))
    const before = await recipeBySlug('taken-down')
    const { at } = await withdraw(STEWARD, order('taken-down'))
    expect(await recipeBySlug('taken-down')).toBeNull()
    expect(await recipeBySlug('taken-down', 1)).toBeNull()
    expect(await db().recipeIndex.count({ where: { slug: 'taken-down' } })).toBe(0)
    expect(await withdrawnEntry('taken-down')).toEqual({
      kind: 'recipe',
      title: 'Gone',
      at,
      words: 'The owner asked.',
      erased: false,
    })
    await restore(STEWARD, order('taken-down'))
    expect(await recipeBySlug('taken-down')).toEqual(before)
    expect(await withdrawnEntry('taken-down')).toBeNull()
  })

  it('answers a repeated key with the first result', async () => {
    await publish('recipe', 'down-twice', makeRecipe())
    const down = order('down-twice')
    const first = await withdraw(STEWARD, down)
    expect(await withdraw(STEWARD, down)).toEqual({ ...first, repeated: true })
  })

  it('takes no further revision and no verdict while an entry is withdrawn', async () => {
    await publish('recipe', 'down', makeRecipe())
    const waiting = await send('down', 1)
    await withdraw(STEWARD, order('down'))
    await expect(send('down', 2)).rejects.toThrow(conflict)
    await expect(decide(REVIEWER, verdictOn(waiting))).rejects.toThrow(conflict)
  })

  it('refuses all but stewards, and what is not there to take down or to put back', async () => {
    await publish('recipe', 'standing', makeRecipe())
    for (const actor of [CONTRIBUTOR, REVIEWER])
      await expect(withdraw(actor, order('standing'))).rejects.toMatchObject({ code: 'forbidden' })
    await expect(restore(STEWARD, order('standing'))).rejects.toThrow(conflict)
    await expect(withdraw(STEWARD, order('nowhere'))).rejects.toMatchObject({ code: 'not-found' })
    await send('never-published')
    await expect(withdraw(STEWARD, order('never-published'))).rejects.toThrow(conflict)
  })
})
