import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest'
import { speaking } from '#app/asked.ts'
import { sessionOf } from '#lib/auth/current.ts'
import { makeLink, redeemLink } from '#lib/auth/links.ts'
import { beginService, endService } from '#lib/auth/service.ts'
import { db } from '#lib/db/client.ts'
import { closeAccount } from '#lib/workflow/account-close.ts'
import { languageBegunIn, sendOn } from '../../app/_http/service.ts'
import { CLIENT, type Claims, goThrough, startProvider } from '../support/oidc.ts'
import { makePerson } from '../support/people.ts'

const SITE = 'http://localhost:3999'
const BACK = `${SITE}/api/auth/callback/oidc`
const people: Record<string, Claims> = {
  ana: { email: 'Ana@people.example', email_verified: true, name: 'Ana' },
  bo: { email: 'bo@people.example', email_verified: true },
  cyd: { email: 'cyd@people.example', email_verified: false },
  dov: { email: 'dov@people.example', email_verified: true, name: 'dov@people.example' },
  eli: {},
  gil: { email: 'gil@people.example', email_verified: true, name: 'Gil' },
  fay: { email: 'fay@people.example', email_verified: false },
}
const folder = mkdtempSync(join(tmpdir(), 'putlog-service-'))
const ENV = { DATA_DIR: folder, SITE_URL: SITE, OIDC_CLIENT_ID: CLIENT.id, OIDC_CLIENT_SECRET: CLIENT.secret }
let provider: Awaited<ReturnType<typeof startProvider>>

beforeAll(async () => {
  // The provider says at its start that it is set up for trying out.
  vi.spyOn(console, 'info').mockImplementation(() => {})
  provider = await startProvider(people, BACK)
  Object.assign(process.env, ENV, { OIDC_ISSUER: provider.issuer })
})
afterAll(async () => {
  for (const name of [...Object.keys(ENV), 'OIDC_ISSUER', 'NEXTAUTH_URL']) delete process.env[name]
  await provider.stop()
  rmSync(folder, { recursive: true })
})

const asked = (cookies: Record<string, string> = {}) => ({
  from: { address: '192.0.2.1', agent: 'A test' },
  secure: false,
  cookies,
})
const jarOf = (headers: readonly string[]) =>
  Object.fromEntries(
    headers.map((header) => {
      const [name = '', value = ''] = (header.split(';')[0] ?? '').split(/=(.*)/s)
      return [name, decodeURIComponent(value)]
    }),
  )

/** The whole way: to the provider, through it and back. */
async function signInAs(subject: string) {
  const begun = await beginService('/write', asked())
  const cookies = jarOf(begun?.cookies ?? [])
  const back = await goThrough(begun?.location ?? '', subject, BACK)
  const ended = await endService(Object.fromEntries(back.searchParams), asked(cookies))
  const jar = jarOf(ended?.cookies ?? [])
  const session = await sessionOf((name) => jar[name], false)
  return { begun, back, cookies, ended, session }
}

describe('signing in through a provider of OpenID Connect', () => {
  it('opens an account for who is new, and signs in to it the next time', async () => {
    const { ended, session, begun } = await signInAs('ana')
    expect(new URL(begun?.location ?? '').searchParams.get('code_challenge_method')).toBe('S256')
    expect(ended?.location).toBe(`${SITE}/write`)
    expect(session).toMatchObject({
      name: 'Ana',
      email: 'ana@people.example',
      how: 'service',
      roles: ['contributor'],
    })
    expect(session?.emailVerifiedAt).toBeInstanceOf(Date)
    expect((await signInAs('ana')).session?.key).toBe(session?.key)
    const cookie = ended?.cookies.find((one) => one.startsWith('putlog-session='))
    expect(cookie).toMatch(/HttpOnly/i)
    expect(cookie).toMatch(/SameSite=Lax/i)
  })

  it('opens it in the language of the page that it began on', async () => {
    const begun = await beginService('/es/write', asked())
    const cookies = jarOf(begun?.cookies ?? [])
    expect(languageBegunIn(asked(cookies))).toBe('es')
    expect(languageBegunIn(asked({ 'putlog-back': 'nowhere' }))).toBe('en')
    const back = await goThrough(begun?.location ?? '', 'gil', BACK)
    const from = { ...asked().from, language: languageBegunIn(asked(cookies)) }
    const ended = await endService(Object.fromEntries(back.searchParams), { ...asked(cookies), from })
    const jar = jarOf(ended?.cookies ?? [])
    expect(await sessionOf((name) => jar[name], false)).toMatchObject({ name: 'Gil', language: 'es' })
    const failed = { location: '/sign-in?problem=service', cookies: [] }
    const led = speaking('es', () => sendOn(failed)).headers.get('location')
    expect(led).toBe('/es/sign-in?problem=service')
    const away = { ...failed, location: `${provider.issuer}/auth` }
    expect(speaking('es', () => sendOn(away)).headers.get('location')).toBe(away.location)
  })

  it('lets go of the service once the owner of the address shows it', async () => {
    const first = (await signInAs('fay')).session
    expect(first?.email).toBe('fay@people.example')
    expect(first?.emailVerifiedAt).toBeNull()
    const link = await makeLink({ purpose: 'sign-in', email: 'fay@people.example', accountId: null })
    await redeemLink(new URL(link).searchParams.get('secret') ?? '', {}, null, asked().from)
    const again = await signInAs('fay')
    expect(again.session).toBeNull()
  })

  it('links an address that both sides have confirmed', async () => {
    const { key } = await makePerson({ email: 'bo@people.example' })
    expect((await signInAs('bo')).session?.key).toBe(key)
  })

  it.each([
    ['the provider has not confirmed', 'cyd', true],
    ['this site has not confirmed', 'dov', false],
  ])('refuses an address that %s, and links nothing', async (_, subject, confirmed) => {
    await makePerson({ email: `${subject}@people.example`, confirmed })
    const { session, ended } = await signInAs(subject)
    expect(session).toBeNull()
    expect(ended?.location).toMatch(/\/sign-in\?problem=address$/)
    expect(await db().identity.count({ where: { subject } })).toBe(0)
  })

  it('opens an account without an address or a name where none is told', async () => {
    expect((await signInAs('eli')).session).toMatchObject({ name: 'New contributor', email: null })
  })

  it('refuses to end what another browser began, and what nobody began', async () => {
    vi.mocked(console.error).mockImplementation(() => {})
    const { back } = await signInAs('ana')
    const query = Object.fromEntries(back.searchParams)
    const other = jarOf((await beginService('/', asked()))?.cookies ?? [])
    for (const cookies of [{}, other]) {
      const ended = await endService(query, asked(cookies))
      expect(ended?.location).toMatch(/\/sign-in\?problem=service/)
      expect(await sessionOf((name) => jarOf(ended?.cookies ?? [])[name], false)).toBeNull()
    }
    vi.mocked(console.error).mockClear()
  })

  it('leads to no other host afterwards', async () => {
    const begun = await beginService('//evil.example/', asked())
    const cookies = jarOf(begun?.cookies ?? [])
    const back = await goThrough(begun?.location ?? '', 'ana', BACK)
    const ended = await endService(Object.fromEntries(back.searchParams), asked(cookies))
    expect(new URL(ended?.location ?? '', SITE).origin).toBe(SITE)
  })

  it('opens a new account after the first one was closed', async () => {
    const first = (await signInAs('ana')).session
    if (first === null) throw new Error('no session')
    const actor = { kind: 'member', key: first.key, roles: first.roles } as const
    await closeAccount({ actor, accountId: first.accountId })
    const second = (await signInAs('ana')).session
    expect(second?.key).not.toBe(first.key)
  })

  it('is not offered where none is set', async () => {
    const { OIDC_ISSUER, OIDC_CLIENT_ID, OIDC_CLIENT_SECRET } = process.env
    for (const name of ['OIDC_ISSUER', 'OIDC_CLIENT_ID', 'OIDC_CLIENT_SECRET']) delete process.env[name]
    expect(await beginService('/', asked())).toBeNull()
    expect(await endService({}, asked())).toBeNull()
    Object.assign(process.env, { OIDC_ISSUER, OIDC_CLIENT_ID, OIDC_CLIENT_SECRET })
  })
})
