import { v4 } from 'uuid'
import { beforeAll, describe, expect, it } from 'vitest'
import type { Member } from '#lib/access/actor.ts'
import { db } from '#lib/db/client.ts'
import { checkProjections } from '#lib/db/projection/check.ts'
import type { RecipeBody } from '#lib/entry/recipe.ts'
import { Refusal } from '#lib/errors.ts'
import { decide } from '#lib/workflow/decide.ts'
import { EditConflict, submit } from '#lib/workflow/submit.ts'
import { verify } from '#lib/workflow/verify.ts'
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
  verdictOn,
} from '../support/make.ts'

const writer = (n: number): Member => ({ kind: 'member', key: `racer-${n}`, roles: ['contributor'] })

describe('many writers on one entry', () => {
  const WRITERS = 12
  const EDITS = 5

  it('each accepted edit is there, none is overwritten, and repeats answer as the first time', async () => {
    await submit(CONTRIBUTOR, makeSubmission({ slug: 'raced' }), REFERENCES)
    /** What each writer was told: the revision that took their edit. */
    const accepted: { number: number; title: string }[] = []
    let conflicts = 0
    await Promise.all(
      Array.from({ length: WRITERS }, async (_, n) => {
        for (let edit = 0, basedOn = 1; edit < EDITS; ) {
          const title = `Edit ${edit} of writer ${n}`
          const write = makeSubmission({ slug: 'raced', basedOn, body: makeRecipe({ title }) })
          try {
            // A client that lost the answer sends again, at once or later: both must tell of one revision.
            const [first, again] = await Promise.all([
              submit(writer(n), write, REFERENCES),
              submit(writer(n), write, REFERENCES),
            ])
            const later = await submit(writer(n), write, REFERENCES)
            expect([again.number, later.number]).toEqual([first.number, first.number])
            expect([first.repeated, again.repeated].sort()).toEqual([false, true])
            accepted.push({ number: first.number, title })
            basedOn = first.number
            edit++
          } catch (error) {
            if (!(error instanceof EditConflict)) throw error
            conflicts++
            basedOn = error.theirs.number
          }
        }
      }),
    )
    const stored = await db().revision.findMany({
      where: { entry: { slug: 'raced' } },
      orderBy: { number: 'asc' },
    })
    expect(stored.map(({ number }) => number)).toEqual(
      Array.from({ length: WRITERS * EDITS + 1 }, (_, i) => i + 1),
    )
    expect(
      stored.slice(1).map(({ number, body }) => ({ number, title: (body as RecipeBody).title })),
    ).toEqual(accepted.sort((a, b) => a.number - b.number))
    // Each edit was made by one who had seen the one before.
    expect(stored.slice(1).map(({ basedOn }) => basedOn)).toEqual(
      stored.slice(0, -1).map(({ number }) => number),
    )
    expect(conflicts).toBeGreaterThan(0)
    // Many are refused and try again by design; a busy machine takes minutes for it.
  }, 300_000)

  it('one of those who make the same address at once has it, and the others are told so', async () => {
    for (let round = 0; round < 5; round++) {
      const outcomes = await Promise.allSettled(
        Array.from({ length: 8 }, (_, n) =>
          submit(writer(n), makeSubmission({ slug: `same-${round}` }), REFERENCES),
        ),
      )
      const reasons = outcomes.flatMap((outcome) => (outcome.status === 'rejected' ? [outcome.reason] : []))
      expect(reasons).toHaveLength(7)
      for (const reason of reasons)
        expect(reason).toMatchObject({ faults: [{ field: 'slug', code: 'taken' }] })
    }
  })

  it('a key sent many times at once makes one entry', async () => {
    const write = makeSubmission({ slug: 'once', key: v4() })
    const answers = await Promise.all(Array.from({ length: 8 }, () => submit(CONTRIBUTOR, write, REFERENCES)))
    expect(new Set(answers.map(({ revisionId }) => revisionId)).size).toBe(1)
    expect(answers.filter(({ repeated }) => !repeated)).toHaveLength(1)
  })
})

describe('many reviewers publishing at once', () => {
  beforeAll(async () => {
    await publish('recipe', 'shared', makeRecipe())
  })

  it('leave projections that count every case and visit', async () => {
    const cases = await Promise.all(
      Array.from({ length: 10 }, (_, n) =>
        submit(
          CONTRIBUTOR,
          makeSubmission({
            kind: 'case',
            slug: `wall-${n}`,
            body: makeCase({ works: [makeWork({ recipe: 'shared@1' })] }),
          }),
          REFERENCES,
        ),
      ),
    )
    await Promise.all(cases.map((submitted) => decide(REVIEWER, verdictOn(submitted))))
    const visits = await Promise.all(
      Array.from({ length: 20 }, (_, n) =>
        submit(
          CONTRIBUTOR,
          makeSubmission({
            kind: 'visit',
            slug: `visit-${n}`,
            body: makeVisit({ case: `wall-${n % 4}`, on: `2012-03-${String(n + 1).padStart(2, '0')}` }),
          }),
          REFERENCES,
        ),
      ),
    )
    await Promise.all(visits.map((submitted) => decide(REVIEWER, verdictOn(submitted))))
    expect((await db().recipeIndex.findUniqueOrThrow({ where: { slug: 'shared' } })).cases).toBe(10)
    expect((await db().caseIndex.findUniqueOrThrow({ where: { slug: 'wall-0' } })).visits).toBe(5)
    const wrong: unknown[] = []
    for await (const disagreement of checkProjections(db())) wrong.push(disagreement)
    expect(wrong).toEqual([])
    expect((await verify('no-such-folder')).findings).toEqual([])
  })

  it('never throws anything but a refusal when everything is contended', async () => {
    const outcomes = await Promise.allSettled(
      Array.from({ length: 30 }, async (_, n) => {
        const submitted = await submit(
          writer(n),
          makeSubmission({ slug: 'shared', basedOn: 1, body: makeRecipe({ title: `Try ${n}` }) }),
          REFERENCES,
        )
        return decide(REVIEWER, verdictOn(submitted))
      }),
    )
    const reasons = outcomes.flatMap((outcome) => (outcome.status === 'rejected' ? [outcome.reason] : []))
    expect(reasons).toHaveLength(29)
    expect(reasons.every((reason) => reason instanceof Refusal)).toBe(true)
  })
})
