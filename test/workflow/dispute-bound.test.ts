import { v4 } from 'uuid'
import { describe, expect, it } from 'vitest'
import type { Member } from '#lib/access/actor.ts'
import { db } from '#lib/db/client.ts'
import { dispute } from '#lib/workflow/dispute.ts'
import { makeRecipe, publish } from '../support/make.ts'

const said = (slug: string) => ({ key: v4(), slug, words: 'For a reason.' })

// A file of its own: its made-up decisions are no chain, which the record of other tests is.
describe('dispute(actor, objection)', () => {
  it('takes twenty a day from one person, and answers a repeated one at the bound', async () => {
    const busy: Member = { kind: 'member', key: 'busy-reader', roles: [] }
    const { entryId, revisionId } = await publish('recipe', 'objected', makeRecipe())
    await publish('recipe', 'objected-too', makeRecipe())
    const at = new Date()
    await db().decision.createMany({
      data: Array.from({ length: 19 }, (_, index) => ({
        id: v4(),
        entryId,
        revisionId,
        number: 100 + index,
        outcome: 'dispute' as const,
        reviewerKey: busy.key,
        checklist: {},
        words: 'It is wrong.',
        at,
        digest: 'a'.repeat(64),
        key: v4(),
      })),
    })
    const last = said('objected-too')
    expect((await dispute(busy, last)).outcome).toBe('dispute')
    expect(await dispute(busy, last)).toMatchObject({ repeated: true })
    await expect(dispute(busy, said('objected'))).rejects.toMatchObject({ code: 'too-many' })
  })
})
