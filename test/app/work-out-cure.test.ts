import { expect, test } from 'vitest'
import { carbonate } from '#lib/mortar/cure.ts'
import { coefficientFrom } from '#lib/mortar/cure-coefficient.ts'
import { exactly } from '#lib/mortar/range.ts'
import { benchData } from '../../app/_ui/workshop/data.ts'
import { namedFigures } from '../../app/_ui/workshop/figures.ts'
import { workOut } from '../../app/_ui/workshop/run.ts'
import { cure } from '../../app/work-out/cure/calculation.ts'
import { value } from '../mortar/check.ts'

const data = benchData(cure)
const work = (typed: Record<string, string>) =>
  workOut(cure, { units: 'metric', in: 'metric', ...typed }, data)
const figure = (typed: Record<string, string>, name: string) =>
  namedFigures(work(typed).shown?.blocks ?? []).find((one) => one.name === name)?.value

const DEPTH = {
  what: 'depth',
  from: 'measured',
  'measured-depth': '4-6',
  'measured-age': '90',
  thickness: '25',
  ages: '90 365',
}
const FROST = { what: 'frost', lows: '8 6 4 1 -1 - 7', protect: '3-5', margin: '2' }

test('a depth measured at an age sets the coefficient, and comes back at that age', () => {
  const { k } = value(coefficientFrom({ depthMm: { low: 4, typical: 5, high: 6 }, days: exactly(90) }))
  const direct = value(carbonate({ kMmPerRootDay: k, depthMm: exactly(25), faces: 1, ages: [90, 365] }))
  expect(figure(DEPTH, 'depths.1.depth')).toEqual(direct.depths[0]?.mm)
  expect(figure(DEPTH, 'full.days')).toEqual(direct.fullDays)
  expect(figure({ ...DEPTH, faces: '2' }, 'full.days')).toMatchObject({
    typical: direct.fullDays.typical / 4,
  })
})

test('no coefficient is offered where none was measured', () => {
  const { shown, faults } = work({ what: 'depth', from: 'known', thickness: '25', ages: '90' })
  expect(shown).toBeUndefined()
  expect(faults.map(({ name }) => name)).toEqual(['k'])
})

test('a night of frost within the protection is a hazard, and what frost asks for is told', () => {
  const late = work({ ...FROST, lows: '8 8 8 8 1' }).shown
  expect(late?.blocks[0]).toMatchObject({ kind: 'notice', tone: 'caution' })
  const sooner = work({ ...FROST, lows: '8 -3 4' }).shown
  expect(sooner?.blocks[0]).toMatchObject({ kind: 'notice', tone: 'hazard' })
  expect(JSON.stringify(sooner?.blocks)).toContain('If it froze')
  expect(JSON.stringify(work({ ...FROST, lows: '8 8 8 8 8 8' }).shown?.blocks)).not.toContain('If it froze')
})

test('nights that nobody gave are counted as not covered, never as mild', () => {
  expect(figure({ ...FROST, lows: '8 8' }, 'counts.not-covered')).toBe(3)
  const { shown } = work({ ...FROST, lows: '8 8' })
  expect(JSON.stringify(shown?.blocks[0])).toContain('What is not known is not mild')
  expect(figure({ ...FROST, lows: '8 - 8 8 8' }, 'nights.1.low')).toBeNull()
})

test('a margin is a difference of temperature: 9 F° are 5 K', () => {
  const us = { what: 'frost', units: 'us', in: 'us', lows: '40 40 40 40 40', protect: '3-5' }
  // 40 °F are 4.4 °C.
  expect(figure({ ...us, margin: '9' }, 'counts.near-frost')).toBe(5)
  expect(figure({ ...us, margin: '7' }, 'counts.near-frost')).toBe(0)
})
