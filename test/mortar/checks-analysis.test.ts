import { describe, expect, test } from 'vitest'
import { expectCheck } from './check.ts'
import { ANALYSIS_CHECKS } from './checks-analysis.ts'

describe('the analytic sums agree with the world outside', () => {
  test.each(ANALYSIS_CHECKS)('$id: $source, $locator', (check) => expectCheck(check))

  test('at least forty checks from at least twelve sources, each with its own id', () => {
    expect(ANALYSIS_CHECKS.length).toBeGreaterThanOrEqual(40)
    expect(new Set(ANALYSIS_CHECKS.map((check) => check.source)).size).toBeGreaterThanOrEqual(12)
    expect(new Set(ANALYSIS_CHECKS.map((check) => check.id)).size).toBe(ANALYSIS_CHECKS.length)
  })
})
