import { describe, expect, it } from 'vitest'
import { fitsPassword, hashPassword, LONGEST, passwordFault, SHORTEST } from '#lib/auth/password.ts'

const OWN = ['Ana Kivi', 'ana.kivi@people.example']

describe('passwordFault(password, own)', () => {
  it.each([
    ['lime and three of sand', null],
    ['слово за слово камень', null],
    ['x'.repeat(SHORTEST - 1), 'password-short'],
    ['🧱'.repeat(SHORTEST - 1), 'password-short'],
    [`good words ${'x'.repeat(LONGEST)}`, 'password-long'],
    ['passwordpassword', 'password-known'],
    ['PasswordPassword', 'password-known'],
    ['qwertyuiop123456', 'password-known'],
    ['sunshine2024!!!!', 'password-known'],
    ['abcabcabcabcabc', 'password-known'],
    ['aaaaaaaaaaaaaaab', 'password-known'],
    ['ana.kivi@people.example', 'password-own'],
    ['AnaKiviAnaKivi12', null],
    ['kivipeople2026', 'password-own'],
  ])('of %j says %s', async (password, fault) => {
    expect(await passwordFault(password, OWN)).toBe(fault)
  })
})

describe('hashPassword(password) and fitsPassword(stored, password)', () => {
  // OWASP Password Storage Cheat Sheet, argon2id: m = 19456 (19 MiB), t = 2, p = 1 at the least.
  it('stores argon2id at the cost OWASP names, with a salt of its own each time', async () => {
    const [one, two] = await Promise.all([hashPassword('lime and sand'), hashPassword('lime and sand')])
    expect(one).toMatch(/^\$argon2id\$v=19\$m=19456,t=2,p=1\$[A-Za-z0-9+/]{22}\$[A-Za-z0-9+/]{43}$/)
    expect(two).not.toBe(one)
  })

  it('knows the password again, however its letters were composed, and no other', async () => {
    const stored = await hashPassword('pär lubja kohta')
    expect(await fitsPassword(stored, 'pär lubja kohta')).toBe(true)
    expect(await fitsPassword(stored, 'pa\u0308r lubja kohta')).toBe(true)
    expect(await fitsPassword(stored, 'par lubja kohta')).toBe(false)
  })

  it('fits nothing to nobody, and works as long on it', async () => {
    expect(await fitsPassword(null, 'lime and sand')).toBe(false)
  })
})
