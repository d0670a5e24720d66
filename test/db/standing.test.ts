import { v4 } from 'uuid'
import { expect, it } from 'vitest'
import { standingOf } from '#lib/db/standing.ts'
import { eraseBody } from '#lib/workflow/erase.ts'
import { restore, withdraw } from '#lib/workflow/withdraw.ts'
import { makeRecipe, publish, STEWARD } from '../support/make.ts'

const told = async (...slugs: string[]) =>
  Object.fromEntries((await standingOf(slugs)).map(({ slug, state, revision }) => [slug, [state, revision]]))
const order = (slug: string) => ({ key: v4(), slug, words: 'The owner asked.' })

it('standingOf(slugs) tells what is published, withdrawn and erased, and leaves out what never was', async () => {
  for (const slug of ['stands', 'twice', 'down', 'blanked']) await publish('recipe', slug, makeRecipe())
  await publish('recipe', 'twice', makeRecipe({ title: 'Again' }), 1)
  await withdraw(STEWARD, order('down'))
  await withdraw(STEWARD, order('blanked'))
  await eraseBody(STEWARD, { ...order('blanked'), number: 1, ground: 'personal-data' })
  expect(await told('stands', 'twice', 'down', 'blanked', 'no-such', 'Not a slug')).toEqual({
    stands: ['published', 1],
    twice: ['published', 2],
    down: ['withdrawn', null],
    blanked: ['erased', null],
  })
  await restore(STEWARD, order('down'))
  expect(await told('down')).toEqual({ down: ['published', 1] })
  expect(await told()).toEqual({})
})
