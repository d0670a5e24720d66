import { expect, it } from 'vitest'
import { countResults } from '#lib/cli/test.ts'

const report = (given: object) =>
  JSON.stringify({ numPassedTests: 0, numFailedTests: 0, testResults: [], ...given })

it('countResults(report) gives passed and failed as vitest counted them', () => {
  const testResults = [{ status: 'failed', assertionResults: [{}, {}] }]
  expect(countResults(report({ numPassedTests: 41, numFailedTests: 2, testResults }))).toEqual({
    passed: 41,
    failed: 2,
  })
})

it('countResults(report) counts a file that could not be run as a failure', () => {
  const testResults = [
    { status: 'failed', assertionResults: [] },
    { status: 'passed', assertionResults: [{}] },
  ]
  expect(countResults(report({ numPassedTests: 1, testResults }))).toEqual({ passed: 1, failed: 1 })
})
