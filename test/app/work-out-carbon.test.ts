import { expect, test } from 'vitest'
import { MOLAR_MASS, WATER_PER_CAO } from '#lib/mortar/constants.ts'
import { benchData } from '../../app/_ui/workshop/data.ts'
import { namedFigures } from '../../app/_ui/workshop/figures.ts'
import { workOut } from '../../app/_ui/workshop/run.ts'
import { carbon } from '../../app/work-out/carbon/calculation.ts'

const data = benchData(carbon)
const KNOWN = {
  mortar: '1000',
  'lime-kg': '100',
  cao: '90',
  mgo: '0',
  fuel: '0.3',
  'lime-km': '100',
  'sand-kg': '1500',
  'sand-gate': '0.005',
  'sand-km': '20',
  haulage: '0.1',
  uptake: '80',
  k: '0.5',
  thickness: '20',
  years: '1 1000',
}
const work = (typed: Record<string, string>) =>
  workOut(carbon, { units: 'metric', in: 'metric', ...typed }, data)
const figure = (typed: Record<string, string>, name: string) =>
  namedFigures(work(typed).shown?.blocks ?? []).find((one) => one.name === name)?.value

test('adds up what is known, and takes back in the end what air reaches', () => {
  const stone = 90 * (MOLAR_MASS.CO2 / MOLAR_MASS.CaO)
  expect(figure(KNOWN, 'released.calcination')).toMatchObject({ typical: stone })
  expect(figure(KNOWN, 'released.released')).toMatchObject({
    typical: expect.closeTo(stone + 30 + 7.5 + 0.1 * (0.1 * 100 + 1.5 * 20), 6),
  })
  expect(figure(KNOWN, 'uptake.end.taken')).toMatchObject({ typical: expect.closeTo(0.8 * stone, 6) })
  expect(figure(KNOWN, 'uptake.age-2.taken')).toEqual(figure(KNOWN, 'uptake.end.taken'))
})

test('leaves open what nobody knows: no nought for it, no remainder, no line of working', () => {
  const open = { ...KNOWN, fuel: '', 'sand-km': '' }
  expect(figure(open, 'released.fuel')).toBeNull()
  expect(figure(open, 'released.transport')).toBeNull()
  expect(figure(open, 'uptake.end.left')).toBeNull()
  expect(figure(open, 'uptake.end.taken')).not.toBeNull()
  const { shown } = work(open)
  expect(shown?.blocks[0]).toMatchObject({ kind: 'notice', tone: 'caution' })
  expect(shown?.steps.map(({ symbol }) => symbol)).not.toContain('C_f')
  expect(shown?.steps.find(({ symbol }) => symbol === 'C')?.means).toBe('analysis.carbonKnown')
})

test('knows how much comes back without knowing when', () => {
  const untimed = { ...KNOWN, k: '' }
  expect(figure(untimed, 'uptake.age-1.taken')).toBeNull()
  expect(figure(untimed, 'uptake.end.taken')).toEqual(figure(KNOWN, 'uptake.end.taken'))
})

test('a hydrate holds less lime by weight, by the water that it took up', () => {
  const usual = (weighed: string) => {
    const field = carbon.fields({ weighed, lime: 'lime-cl90' }, data).find(({ name }) => name === 'cao')
    return field?.kind === 'amount' ? (field.usual?.typical ?? 0) : 0
  }
  const free = usual('quicklime')
  expect(free).toBe(data.materials['lime-cl90']?.properties.freeCaO?.typical)
  expect(usual('dry-hydrate')).toBeCloseTo(free / (1 + free * WATER_PER_CAO), 12)
})

test('says that a hydraulic lime has more lime in it than the free', () => {
  const says = (typed: Record<string, string>) => JSON.stringify(work(typed).shown?.blocks)
  const hydraulic = { ...KNOWN, lime: 'lime-nhl35', cao: '' }
  expect(says(hydraulic)).toContain('Only the free lime')
  expect(says({ ...hydraulic, cao: '60' })).not.toContain('Only the free lime')
})
