import { mkdtempSync, readFileSync, rmSync, statSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { decode } from 'next-auth/jwt'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { authSecret, keptSecret } from '#lib/auth/secret.ts'
import { decodeSession, encodeSession } from '#lib/auth/session-token.ts'

const folder = mkdtempSync(join(tmpdir(), 'putlog-secret-'))
beforeAll(() => {
  process.env.DATA_DIR = folder
})
afterAll(() => {
  delete process.env.DATA_DIR
  rmSync(folder, { recursive: true })
})

describe('keptSecret(dataDir)', () => {
  it('is made once, random, and readable by its owner alone', () => {
    const secret = keptSecret(folder)
    expect(secret).toMatch(/^[\w-]{43}$/)
    expect(keptSecret(folder)).toBe(secret)
    const file = join(folder, 'keys', 'sessions.key')
    expect(readFileSync(file, 'utf8')).toBe(secret)
    expect(statSync(file).mode & 0o777).toBe(0o600)
    const other = join(folder, 'other')
    expect(keptSecret(other)).not.toBe(secret)
  })
})

describe('encodeSession(sid) and decodeSession(token)', () => {
  it('carries the random session id and, beside its times and its own number, nothing else', async () => {
    const token = await encodeSession('random-id')
    expect(await decodeSession(token)).toBe('random-id')
    const read = await decode({ token, secret: authSecret() })
    expect(Object.keys(read ?? {}).sort()).toEqual(['exp', 'iat', 'jti', 'sid'])
    expect(token).not.toContain('random-id')
  })

  it.each(['', 'nonsense', 'a.b.c.d.e', 'x'.repeat(5000)])('takes %j for no session', async (token) => {
    expect(await decodeSession(token)).toBeNull()
  })

  it('takes a token that another secret encrypted, or that was changed, for no session', async () => {
    const token = await encodeSession('random-id')
    expect(await decodeSession(`${token.slice(0, -2)}AA`)).toBeNull()
    await expect(decode({ token, secret: 'another secret of enough length' })).rejects.toThrow()
  })
})
