import { describe, expect, it } from 'vitest'
import { loadCases } from '../bench/find-load.ts'
import { measureFind } from '../bench/find-run.ts'

/** Enough for every question to have answers; `npm run bench -- find` takes as many as it is told. */
const CASES = 3000

describe('the measurement of finding', () => {
  it('completes, and each answer is that of the SQL written by hand for its question alone', async () => {
    const url = process.env.DATABASE_URL ?? ''
    await loadCases(url, CASES, 1)
    const report = await measureFind(url, CASES, { queries: 60, byHand: 8, inMemory: false })
    expect(report.differing).toEqual([])
    expect(report.compared).toBe(46)
    expect(report.rows.filter(({ who }) => who === 'ours').map(({ queries }) => queries)).toEqual([
      15, 15, 15, 15, 9, 6,
    ])
  }, 300_000)
})
