import { afterEach, beforeEach, expect, vi } from 'vitest'

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
