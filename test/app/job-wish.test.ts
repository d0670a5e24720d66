import { describe, expect, it } from 'vitest'
import { asksLive, leavesWorking, wantsExamples, wishFor } from '../../app/recipes/[slug]/job/wish.ts'

describe('wishFor(changed, working)', () => {
  it.each([
    [[], false, 'live'],
    [[], true, 'working'],
    [['sand', 'lime', 'in'], false, 'live'],
    [['use'], false, 'fields-1'],
    [['use-3', 'units'], true, 'fields-3'],
    [['use', 'use-2'], false, 'fields'],
  ])('of %j with the working open: %s is %s', (changed, working, wish) => {
    expect(wishFor(changed, working)).toBe(wish)
  })

  it('asks for examples in the work whose kind changed, and in no other', () => {
    const wish = wishFor(['use-2'], false)
    expect([1, 2, 3].map((work) => wantsExamples(wish, work))).toEqual([false, true, false])
    expect(wantsExamples('fields', 3)).toBe(true)
    expect(wantsExamples(wishFor([], false), 1)).toBe(false)
  })

  it('leaves the working out only where nobody looks at it', () => {
    expect(leavesWorking(wishFor([], false))).toBe(true)
    expect(leavesWorking(wishFor([], true))).toBe(false)
    expect(leavesWorking(undefined)).toBe(false)
    expect([undefined, 'fields', 'more', 'live', 'working'].map(asksLive)).toEqual([
      false,
      false,
      false,
      true,
      true,
    ])
  })
})
