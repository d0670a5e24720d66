import { existsSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { takeLock } from '#lib/db/embedded/lock.ts'
import { startOf } from '#lib/db/embedded/processes.ts'
import { newFolder } from '#test/support/serve.ts'

const newLock = () => join(newFolder('putlog-lock-'), 'in-use')

describe('takeLock(file)', () => {
  it('takes a free lock, and gives it back', () => {
    const file = newLock()
    const lock = takeLock(file)
    if (!('release' in lock)) throw new Error('it was not taken')
    expect(existsSync(file)).toBe(true)
    lock.release()
    expect(existsSync(file)).toBe(false)
  })

  it('names the living process that holds it', () => {
    const file = newLock()
    takeLock(file)
    expect(takeLock(file)).toEqual({ heldBy: process.pid })
  })

  it.each([
    ['is gone', { pid: 2 ** 22 + 1, start: '1' }],
    [
      'has a number that went to another process since',
      { pid: process.pid, start: `${startOf(process.pid)}0` },
    ],
  ])('takes over from a process that %s', (_, holder) => {
    const file = newLock()
    writeFileSync(file, JSON.stringify(holder))
    expect(takeLock(file)).toHaveProperty('release')
  })

  it('takes over from one that was cut short while writing', () => {
    const file = newLock()
    writeFileSync(file, '{"pid"')
    expect(takeLock(file)).toHaveProperty('release')
  })
})
