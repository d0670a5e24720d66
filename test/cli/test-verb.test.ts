import { expect, it } from 'vitest'
import { countResults } from '#lib/cli/test.ts'

const report = (given: object) =>
  JSON.stringify({ numPassedTests: 0, numFailedTests: 0, testResults: [], ...given })

it('countResults(report) gives passed and failed as vitest counted them, and says what failed', () => {
  const assertionResults = [
    { status: 'passed', fullName: 'a sound test', failureMessages: [] },
    { status: 'failed', fullName: 'a broken test', failureMessages: ['expected 1 to be 2'] },
  ]
  const testResults = [{ name: 'a.test.ts', status: 'failed', assertionResults }]
  expect(countResults(report({ numPassedTests: 41, numFailedTests: 1, testResults }))).toEqual({
    passed: 41,
    failed: 1,
    failures: ['a.test.ts: a broken test: expected 1 to be 2'],
  })
})

it('countResults(report) counts a file that could not be run as a failure', () => {
  const testResults = [
    { name: 'a.test.ts', status: 'failed', message: 'no such module', assertionResults: [] },
    { name: 'b.test.ts', status: 'passed', assertionResults: [{ status: 'passed' }] },
  ]
  expect(countResults(report({ numPassedTests: 1, testResults }))).toEqual({
    passed: 1,
    failed: 1,
    failures: ['a.test.ts: no such module'],
  })
})
