import { expect, it } from 'vitest'
import { crashRounds } from '#test/support/crash.ts'

it('submit(…) keeps every acknowledged write, once, through 20 kills of the whole database server', async () => {
  const { lost, doubled, acknowledged, cutOff } = await crashRounds(20, 20261125)
  expect(lost).toEqual([])
  expect(doubled).toEqual([])
  // The kills met writers at work, or nothing was shown.
  expect(acknowledged).toBeGreaterThan(100)
  expect(cutOff).toBeGreaterThan(20)
})
