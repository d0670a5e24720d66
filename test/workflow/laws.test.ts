import fc from 'fast-check'
import { v4 } from 'uuid'
import { describe, expect, it } from 'vitest'
import type { Actor } from '#lib/access/actor.ts'
import { GUEST } from '#lib/access/actor.ts'
import { db } from '#lib/db/client.ts'
import { recipeBySlug } from '#lib/db/recipes.ts'
import { Refusal } from '#lib/errors.ts'
import { decide } from '#lib/workflow/decide.ts'
import { rebuild } from '#lib/workflow/rebuild.ts'
import { submit } from '#lib/workflow/submit.ts'
import { verify } from '#lib/workflow/verify.ts'
import { restore, withdraw } from '#lib/workflow/withdraw.ts'
import {
  CONTRIBUTOR,
  makeRecipe,
  makeSubmission,
  OTHER,
  REFERENCES,
  REVIEWER,
  STEWARD,
  verdictOn,
} from '../support/make.ts'

const actor = fc.constantFrom<Actor>(CONTRIBUTOR, OTHER, REVIEWER, STEWARD, GUEST)
const number = fc.integer({ min: 1, max: 5 })
const action = fc.oneof(
  fc.record({
    do: fc.constant('submit' as const),
    actor,
    basedOn: fc.option(number),
    title: fc.string({ minLength: 1, maxLength: 20 }),
  }),
  fc.record({ do: fc.constant('repeat' as const), which: fc.nat(9) }),
  fc.record({
    do: fc.constant('decide' as const),
    actor,
    number,
    outcome: fc.constantFrom('publish' as const, 'return' as const, 'decline' as const),
  }),
  fc.record({ do: fc.constantFrom('withdraw' as const, 'restore' as const), actor }),
  fc.record({ do: fc.constant('rebuild' as const) }),
)

describe('any sequence of actions', () => {
  it('loses and changes no submitted body, and leaves a record that verifies', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(action, { maxLength: 25 }), async (actions) => {
        const slug = `law-${v4()}`
        /** All that was ever accepted, as the writers were told. */
        const accepted = new Map<number, string>()
        const writes: { actor: Actor; write: ReturnType<typeof makeSubmission>; number: number }[] = []
        for (const step of actions) {
          try {
            if (step.do === 'submit') {
              const { title } = step
              const write = makeSubmission({ slug, basedOn: step.basedOn, body: makeRecipe({ title }) })
              const { number } = await submit(step.actor, write, REFERENCES)
              accepted.set(number, title.trim())
              writes.push({ actor: step.actor, write, number })
            } else if (step.do === 'repeat') {
              const past = writes[step.which]
              if (past === undefined) continue
              expect((await submit(past.actor, past.write, REFERENCES)).number).toBe(past.number)
            } else if (step.do === 'decide')
              await decide(step.actor, verdictOn({ slug, number: step.number }, step.outcome))
            else if (step.do === 'withdraw')
              await withdraw(step.actor, { key: v4(), slug, words: 'Taken down.' })
            else if (step.do === 'restore') await restore(step.actor, { key: v4(), slug, words: 'Put back.' })
            else await rebuild()
          } catch (error) {
            if (!(error instanceof Refusal)) throw error
          }
          const stored = await db().revision.findMany({
            where: { entry: { slug } },
            orderBy: { number: 'asc' },
          })
          expect(stored.map(({ number, body }) => [number, (body as { title: string }).title])).toEqual([
            ...accepted,
          ])
        }
        const published = await recipeBySlug(slug)
        if (published) expect(published.body.title).toBe(accepted.get(published.revision))
      }),
      { numRuns: 30, seed: 20261125 },
    )
    expect((await verify('no-such-folder')).findings).toEqual([])
  })
})
