import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { deviceOf, withDevice } from '#lib/auth/device.ts'

const folder = mkdtempSync(join(tmpdir(), 'putlog-device-'))
beforeAll(() => {
  process.env.DATA_DIR = folder
})
afterAll(() => {
  delete process.env.DATA_DIR
  rmSync(folder, { recursive: true })
})

const ANA = 'ana@people.example'

describe('withDevice(before, email) and deviceOf(value, email)', () => {
  it('know a browser for whoever signed in with it, and tell nothing of their address', () => {
    const value = withDevice(undefined, ANA)
    expect(deviceOf(value, ANA)).toMatch(/^[\w-]{16}$/)
    expect(deviceOf(value, 'bo@people.example')).toBeNull()
    expect(value).toMatch(/^[\w~-]+$/)
    expect(withDevice(value, ANA)).toBe(value)
    expect(withDevice(undefined, ANA)).not.toBe(value)
  })

  it('keep those who share a browser, up to four, the last one always', () => {
    const people = ['a', 'b', 'c', 'd', 'e'].map((name) => `${name}@people.example`)
    const value = people.reduce<string | undefined>(withDevice, undefined)
    expect(people.map((email) => deviceOf(value, email) !== null)).toEqual([false, true, true, true, true])
  })

  it('believe nothing that was not signed here', () => {
    const [nonce = ''] = withDevice(undefined, ANA).split('~')
    for (const forged of [undefined, '', '.', '~', nonce, `${nonce}~`, `${nonce}~${'A'.repeat(43)}`])
      expect(deviceOf(forged, ANA)).toBeNull()
  })
})
