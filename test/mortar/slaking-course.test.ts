import { expect, test } from 'vitest'
import { SLAKING_HEAT_CAO, WATER_PER_CAO } from '#lib/mortar/constants.ts'
import { slakeBatch } from '#lib/mortar/slaking.ts'
import { slakingCourse } from '#lib/mortar/slaking-course.ts'
import { value } from './check.ts'

const PUTTY = { quicklimeKg: 10, freeCaO: 0.9, waterKg: 60, waterC: 15 }
const HOT = { quicklimeKg: 10, freeCaO: 0.9, waterKg: 5, sandKg: 40, waterC: 15, sandC: 10 }

test.each([
  ['with much water', PUTTY],
  ['with little, and sand', HOT],
])('slakingCourse(input) ends where slakeBatch ends, %s', (_, input) => {
  const course = value(slakingCourse(input))
  const batch = value(slakeBatch(input))
  expect(course[0]?.share).toBe(0)
  expect(course.at(-1)?.share).toBe(1)
  expect(course.at(-1)?.averageC.typical).toBe(batch.averageC.typical)
  expect(course.at(-1)?.freeKg.typical).toBe(batch.freeKg.typical)
})

test('slakingCourse(input) begins at the temperature and with the water of the start', () => {
  const [start] = value(slakingCourse(PUTTY))
  expect(start?.averageC.typical).toBeCloseTo(15, 9)
  expect(start?.freeKg.typical).toBe(60)
})

test('slakingCourse(input) binds water in step with the lime, and warms all the way', () => {
  const course = value(slakingCourse(PUTTY))
  const half = course[5]
  expect(half?.freeKg.typical).toBeCloseTo(60 - 4.5 * WATER_PER_CAO, 9)
  // Half the heat in some 60 kg of water: less than all of it would warm the water alone.
  expect(half?.averageC.typical).toBeLessThan(15 + (4.5 * SLAKING_HEAT_CAO) / (4.18 * 58))
  const warm = course.map(({ averageC }) => averageC.typical)
  expect(warm).toEqual([...warm].sort((a, b) => a - b))
})

test('slakingCourse(input) never passes boiling while there is water left', () => {
  for (const { averageC, freeKg } of value(slakingCourse(HOT)))
    if (freeKg.typical > 0) expect(averageC.typical).toBeLessThanOrEqual(100)
})

test('slakingCourse(input) is as unsure as its inputs, and refuses what slakeBatch refuses', () => {
  const course = value(slakingCourse({ ...PUTTY, freeCaO: { low: 0.7, typical: 0.9, high: 0.95 } }))
  expect(course[0]?.averageC.high).toBeCloseTo(15, 9)
  expect(course.at(-1)?.averageC.low).toBeLessThan(course.at(-1)?.averageC.typical ?? 0)
  expect(slakingCourse({ ...PUTTY, quicklimeKg: 0 })).toMatchObject({
    ok: false,
    faults: [{ field: 'quicklimeKg', code: 'not-positive' }],
  })
})
