import { describe, expect, test } from 'vitest'
import { expectCheck } from '../mortar/check.ts'
import { EVIDENCE_CHECKS } from './checks.ts'

describe('the statistics agree with the world outside', () => {
  test.each(EVIDENCE_CHECKS)('$id: $source, $locator', (check) => expectCheck(check))

  test('in figures with ids of their own, from at least ten sources', () => {
    expect(new Set(EVIDENCE_CHECKS.map(({ id }) => id)).size).toBe(EVIDENCE_CHECKS.length)
    expect(new Set(EVIDENCE_CHECKS.map(({ source }) => source)).size).toBeGreaterThanOrEqual(10)
  })

  test('and can fail: an answer just outside the tolerance is refused', () => {
    for (const check of EVIDENCE_CHECKS) {
      const off = check.expected + 1.01 * check.tolerance + 1e-12
      expect(() => expectCheck({ ...check, run: () => off }), check.id).toThrow()
    }
  })
})
