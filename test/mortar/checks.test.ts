import { describe, expect, test } from 'vitest'
import { expectCheck } from './check.ts'
import { CORE_CHECKS } from './checks.ts'
import { ANALYSIS_CHECKS } from './checks-analysis.ts'

describe('the core sums agree with the world outside', () => {
  test.each(CORE_CHECKS)('$id: $source, $locator', (check) => expectCheck(check))
})

describe('all checks together', () => {
  const all = [...CORE_CHECKS, ...ANALYSIS_CHECKS]

  test('are at least eighty from at least twenty-five sources, each with its own id', () => {
    expect(all.length).toBeGreaterThanOrEqual(80)
    expect(new Set(all.map(({ source }) => source)).size).toBeGreaterThanOrEqual(25)
    expect(new Set(all.map(({ id }) => id)).size).toBe(all.length)
  })

  test('can fail: an answer a tenth and a bit off is refused', () => {
    for (const check of CORE_CHECKS.filter(({ expected }) => expected !== 0)) {
      const off = check.expected + 1.01 * check.tolerance + Math.abs(check.expected) * 1e-6
      expect(() => expectCheck({ ...check, run: () => off }), check.id).toThrow()
    }
  })
})
