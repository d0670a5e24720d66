import fc from 'fast-check'
import { afterEach, beforeEach, expect, vi } from 'vitest'

// The same cases in every run, so that a change is blamed for nothing that stood there before it. To look for more,
// leave the seed out and raise `numRuns` here.
fc.configureGlobal({ seed: 20261125 })

/** A stray error or warning on the console fails the test; one that is meant is caught by the test itself. */
beforeEach(() => {
  vi.spyOn(console, 'error').mockImplementation(() => {})
  vi.spyOn(console, 'warn').mockImplementation(() => {})
})

afterEach(() => {
  const said = [...vi.mocked(console.error).mock.calls, ...vi.mocked(console.warn).mock.calls]
  vi.restoreAllMocks()
  expect(said, 'nothing on the console').toEqual([])
})
