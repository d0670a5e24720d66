import { expect, it } from 'vitest'
import * as onServer from '../../app/work-out/sieve/blend-sums.ts'
import * as inBrowser from '../../app/work-out/sieve/blend-sums-browser.ts'

it('gives a browser the very sums of the server once they were fetched, and the same promise each time', async () => {
  expect(onServer.areBlendSumsHere()).toBe(true)
  expect(onServer.fetchBlendSums()).toBeUndefined()
  expect(inBrowser.areBlendSumsHere()).toBe(false)
  expect(() => inBrowser.blendSums()).toThrow('not here yet')
  const coming = inBrowser.fetchBlendSums()
  expect(await coming).toBe(true)
  expect(inBrowser.areBlendSumsHere()).toBe(true)
  expect(inBrowser.fetchBlendSums()).toBe(coming)
  expect(inBrowser.blendSums()).toBe(onServer.blendSums())
})
