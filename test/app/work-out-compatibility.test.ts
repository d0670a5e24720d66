import { expect, test } from 'vitest'
import { COMPATIBILITY_RULES } from '#lib/mortar/compatibility-rules.ts'
import { benchData } from '../../app/_ui/workshop/data.ts'
import { namedFigures, namedWords } from '../../app/_ui/workshop/figures.ts'
import { workOut } from '../../app/_ui/workshop/run.ts'
import { compatibility } from '../../app/work-out/compatibility/calculation.ts'

const data = benchData(compatibility)
const shown = (typed: Record<string, string>) =>
  workOut(compatibility, { units: 'metric', in: 'metric', of: 'own', ...typed }, data).shown?.blocks ?? []
const found = (typed: Record<string, string>, rule: string) =>
  namedWords(shown(typed)).find(({ name }) => name === `rules.${rule}.found`)?.words

test('names the source of a conflict that is reported, and gives no verdict', () => {
  const strong = { 'mortar-strength': '20-30', 'unit-strength': '2-5' }
  expect(found(strong, 'strength-unit')).toBe(`conflict reported in ${data.cites['nps-brief-2']}`)
  expect(found({ 'mortar-strength': '1', 'unit-strength': '20' }, 'strength-unit')).toBe('no conflict found')
  expect(shown(strong)[0]).toMatchObject({ kind: 'notice', tone: 'caution' })
})

test('asks for a check where a figure is missing, and says which', () => {
  expect(found({}, 'vapour-unit')).toBe(
    'check: not given: the mortar’s resistance to vapour, the unit’s resistance to vapour',
  )
  for (const { id, kind } of COMPATIBILITY_RULES)
    if (kind !== 'pair') expect(found({}, id)).toMatch(/^check: not given: /)
})

test('speaks of a content only where the mortar has it, and of the wall as it was described', () => {
  expect(found({ 'wall-before-portland-cement': 'yes' }, 'cement-old-wall')).toBeUndefined()
  expect(found({ 'has-cement': 'yes' }, 'cement-old-wall')).toBe('no conflict found')
  expect(found({ 'has-cement': 'yes', 'wall-before-portland-cement': 'yes' }, 'cement-old-wall')).toBe(
    `conflict reported in ${data.cites['istructe-2016']}`,
  )
})

test('every rule carries its source or how it is known', () => {
  const all = {
    'has-cement': 'yes',
    'has-gypsum': 'yes',
    'has-earth': 'yes',
    'has-hydraulic-lime': 'yes',
    'has-dolomitic-lime': 'yes',
  }
  const from = namedWords(shown(all)).filter(({ name }) => name.endsWith('.from'))
  expect(from).toHaveLength(COMPATIBILITY_RULES.length)
  for (const { words } of from) expect(words).not.toBe('')
})

test('takes a mortar’s figures from its lime where none are typed', () => {
  const strength = namedFigures(shown({ of: 'lime-cl90', 'unit-strength': '20' })).find(
    ({ name }) => name === 'rules.strength-unit.figure',
  )
  const known = data.materials['lime-cl90']?.properties.compressiveStrength
  expect(strength?.value).toMatchObject({ low: known?.low, typical: known?.typical, high: known?.high })
})
