import { expect, it } from 'vitest'
import { content } from '#lib/content/index.ts'
import { setsUnderWater } from '#lib/mortar/hydraulic-limes.ts'

it('setsUnderWater(material) knows every lime that content calls hydraulic', () => {
  const limes = [...content().materials.values()].filter(({ role }) => role === 'lime')
  const called = limes.filter(({ label, description }) => /hydraulic lime/i.test(`${label} ${description}`))
  expect(called.length).toBeGreaterThan(6)
  expect(called.filter(({ id }) => !setsUnderWater(id)).map(({ id }) => id)).toEqual([])
  for (const id of ['lime-fat', 'lime-lean', 'lime-cl90', 'lime-dolomitic', 'lime-not-stated'])
    expect(setsUnderWater(id), id).toBe(false)
})
