import { describe, expect, test } from 'vitest'
import { type CompatibilityInput, compareWithWall } from '#lib/mortar/compatibility.ts'
import { COMPATIBILITY_RULES } from '#lib/mortar/compatibility-rules.ts'
import { exactly, type Range } from '#lib/mortar/range.ts'
import { value } from './check.ts'

const EMPTY: CompatibilityInput = {
  mortar: { measures: {}, contents: [] },
  unit: {},
  oldMortar: {},
  wall: { conditions: [], salts: {} },
}
const range = (low: number, typical: number, high: number): Range => ({ low, typical, high })
const outcome = (rule: string, change: Partial<CompatibilityInput>) =>
  value(compareWithWall({ ...EMPTY, ...change })).find((finding) => finding.rule === rule)?.outcome
const strength = (mortar: Range, unit: Range) => ({
  mortar: { measures: { compressiveStrength: mortar, capillarity: mortar }, contents: [] },
  unit: { compressiveStrength: unit, capillarity: unit },
})

describe('compareWithWall(input)', () => {
  test('finds no conflict in a mortar weaker than the unit, one in a stronger, and asks where they overlap', () => {
    expect(outcome('strength-unit', strength(range(0.5, 1, 2), range(20, 40, 60)))).toBe('no-conflict-found')
    expect(outcome('strength-unit', strength(range(15, 20, 25), range(2, 5, 10)))).toBe('conflict-reported')
    expect(outcome('strength-unit', strength(range(2, 5, 10), range(8, 12, 20)))).toBe('check')
    expect(outcome('strength-unit', strength(exactly(5), exactly(5)))).toBe('no-conflict-found')
  })

  test('never reports a conflict on a rule from memory', () => {
    expect(outcome('capillarity-unit', strength(range(0.1, 0.1, 0.1), range(2, 2, 2)))).toBe('check')
    const worst: CompatibilityInput = {
      mortar: {
        measures: {
          compressiveStrength: exactly(90),
          vapourResistance: exactly(90),
          capillarity: exactly(0.001),
        },
        contents: ['air-lime', 'hydraulic-lime', 'dolomitic-lime', 'cement', 'gypsum', 'earth'],
      },
      unit: { compressiveStrength: exactly(1), vapourResistance: exactly(1), capillarity: exactly(9) },
      oldMortar: { compressiveStrength: exactly(1) },
      wall: {
        conditions: ['before-portland-cement', 'damp', 'rain-exposed', 'gypsum-present', 'sulfur-air'],
        salts: { nitrate: exactly(2), sulfate: exactly(2), chloride: exactly(2) },
      },
    }
    const found = value(compareWithWall(worst))
    expect(found).toHaveLength(COMPATIBILITY_RULES.length)
    for (const finding of found) {
      if (finding.basis === 'memory') expect(finding.outcome).not.toBe('conflict-reported')
      if (finding.outcome === 'conflict-reported') expect(finding.source).not.toBeNull()
    }
    expect(found.filter((finding) => finding.outcome === 'no-conflict-found')).toEqual([])
  })

  test('asks to check, and says what is missing, where a figure is not known', () => {
    const finding = value(compareWithWall(EMPTY)).find(({ rule }) => rule === 'vapour-unit')
    expect(finding?.outcome).toBe('check')
    expect(finding?.missing).toEqual(['mortar.vapourResistance', 'unit.vapourResistance'])
  })

  test('shows a pair only to a mortar that has a part in it', () => {
    expect(outcome('cement-old-wall', {})).toBeUndefined()
    const cement = { measures: {}, contents: ['cement' as const] }
    expect(outcome('cement-old-wall', { mortar: cement })).toBe('no-conflict-found')
    const wall = { conditions: ['before-portland-cement' as const], salts: {} }
    expect(outcome('cement-old-wall', { mortar: cement, wall })).toBe('conflict-reported')
  })

  test('passes a salt below its watch level only with its whole range', () => {
    const salt = (nitrate: Range) => outcome('nitrate', { wall: { conditions: [], salts: { nitrate } } })
    expect(salt(range(0, 0.05, 0.09))).toBe('no-conflict-found')
    expect(salt(range(0, 0.05, 0.1))).toBe('check')
  })

  test('refuses negative figures and words it does not know', () => {
    const refused = compareWithWall({
      ...EMPTY,
      unit: { compressiveStrength: exactly(-1) },
      wall: { conditions: ['haunted' as 'damp'], salts: {} },
    })
    expect(refused.ok ? [] : refused.faults.map(({ field }) => field)).toEqual([
      'unit.compressiveStrength',
      'wall.conditions.0',
    ])
  })
})

describe('COMPATIBILITY_RULES', () => {
  test('each have an id of their own, and a source unless from memory', () => {
    expect(new Set(COMPATIBILITY_RULES.map(({ id }) => id)).size).toBe(COMPATIBILITY_RULES.length)
    for (const rule of COMPATIBILITY_RULES) expect(rule.source === undefined).toBe(rule.basis === 'memory')
  })
})
