import { describe, expect, it } from 'vitest'
import { addressOf } from '#lib/auth/limits.ts'

describe('addressOf(chain, hops)', () => {
  it.each([
    // Asked directly: what the client claims counts for nothing.
    ['192.0.2.7', 0, '192.0.2.7'],
    ['203.0.113.9, 192.0.2.7', 0, '192.0.2.7'],
    // One proxy: the address that it was asked from stands before its own.
    ['192.0.2.7, 10.0.0.1', 1, '192.0.2.7'],
    ['203.0.113.9, 192.0.2.7, 10.0.0.1', 1, '192.0.2.7'],
    ['203.0.113.9, 192.0.2.7, 10.0.0.2, 10.0.0.1', 2, '192.0.2.7'],
    // Past the proxies there is nothing to believe but where it came from.
    ['192.0.2.7', 1, '192.0.2.7'],
    ['203.0.113.9, 192.0.2.7', 3, '192.0.2.7'],
    [null, 1, ''],
    ['2001:db8:1:2:3:4:5:6', 0, '2001:db8:1:2'],
    ['2001:db8:1:2::9', 0, '2001:db8:1:2'],
    ['2001:db8::9', 0, '2001:db8:0:0'],
    ['::ffff:192.0.2.7', 0, '192.0.2.7'],
    ['::1', 0, '0:0:0:0'],
  ])('of %j with %i proxies is %s', (chain, hops, address) => {
    expect(addressOf(chain, hops)).toBe(address)
  })
})
