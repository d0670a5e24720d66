import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { v4 } from 'uuid'
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest'
import { actorOf, sessionOf } from '#lib/auth/current.ts'
import { withDevice } from '#lib/auth/device.ts'
import { makeLink, makeStewardLink, openLink, redeemLink } from '#lib/auth/links.ts'
import { changeOwnAddress, changeOwnPassword } from '#lib/auth/own-account.ts'
import { prove } from '#lib/auth/prove.ts'
import { bucketName, secretDigest } from '#lib/auth/random.ts'
import { encodeSession, sessionCookieName } from '#lib/auth/session-token.ts'
import { signInWithPassword } from '#lib/auth/sign-in.ts'
import { signUp } from '#lib/auth/sign-up.ts'
import { run as signInLink } from '#lib/cli/sign-in-link.ts'
import { authorNames, languageOf, listPeople, personByKey } from '#lib/db/accounts.ts'
import { actsDone, listActs } from '#lib/db/audit.ts'
import { db } from '#lib/db/client.ts'
import { calendarOwner, calendarToken } from '#lib/db/reminders.ts'
import { listSessions, type SignedIn, sessionByDigest } from '#lib/db/sessions.ts'
import { renameAccount, setLanguage } from '#lib/workflow/account-change.ts'
import { closeAccount } from '#lib/workflow/account-close.ts'
import { makeCalendar } from '#lib/workflow/remind.ts'
import { nameRoles } from '#lib/workflow/role-name.ts'
import { endSessions } from '#lib/workflow/session-end.ts'
import { makePerson, type Person } from '../support/people.ts'

const folder = mkdtempSync(join(tmpdir(), 'putlog-account-'))
beforeAll(() => {
  process.env.DATA_DIR = folder
})
afterAll(() => {
  delete process.env.DATA_DIR
  rmSync(folder, { recursive: true })
})

const PASSWORD = 'lime and three of sand'
const from = (address = '192.0.2.1') => ({ address, agent: 'A test' })
/** The session that a browser with this random id has. */
const sessionWith = (sid: string) => sessionByDigest(secretDigest(sid))
async function signedIn(person: Person): Promise<SignedIn> {
  const session = await sessionWith(
    await signInWithPassword({ email: person.email, password: PASSWORD }, from()),
  )
  if (session === null) throw new Error('no session')
  return session
}
const own = (session: SignedIn) => {
  const actor = actorOf(session)
  if (actor.kind !== 'member') throw new Error('a guest')
  return { actor, accountId: session.accountId }
}
const secretOf = (link: string | null) => new URL(link ?? '').searchParams.get('secret') ?? ''
const person = (over: Parameters<typeof makePerson>[0] = {}) => makePerson({ password: PASSWORD, ...over })

describe('the first steward', () => {
  it('is whoever uses the link that is made while there is none, once', async () => {
    const secret = secretOf(await makeStewardLink())
    expect(await openLink(secret, null)).toMatchObject({ asks: 'all', link: { purpose: 'first-steward' } })
    await expect(redeemLink(secret, {}, null, from())).rejects.toMatchObject({
      faults: ['name', 'email', 'password'].map((field) => ({ field, code: 'required' })),
    })
    const answers = { name: 'Ste', email: 'ste@people.example', password: PASSWORD }
    const sid = await redeemLink(secret, answers, null, from())
    expect(await sessionWith(sid ?? '')).toMatchObject({ name: 'Ste', roles: ['contributor', 'steward'] })
    await expect(redeemLink(secret, answers, null, from())).rejects.toMatchObject({ code: 'not-found' })
    expect(await openLink(secret, null)).toBeNull()
    expect(await makeStewardLink()).toBeNull()
  })

  it('has no default password: nobody signs in to a site without accounts', async () => {
    for (const email of ['admin@people.example', 'steward@people.example'])
      await expect(
        signInWithPassword({ email, password: 'password1234' }, from('192.0.2.99')),
      ).rejects.toMatchObject({ code: 'invalid' })
  })
})

describe('signUp(person, from) and signInWithPassword(given, from)', () => {
  it('opens an account that may contribute, and signs in to it', async () => {
    const sid = await signUp({ name: 'Ana', email: 'ana@people.example', password: PASSWORD }, from())
    const session = await sessionWith(sid)
    expect(session).toMatchObject({ name: 'Ana', roles: ['contributor'], how: 'password' })
    expect(session?.key).toMatch(/^p-[0-9a-f]{24}$/)
    const again = await signInWithPassword({ email: 'ana@people.example', password: PASSWORD }, from())
    expect(again).not.toBe(sid)
  })

  it('refuses a password that will not do and an address that is taken, and stores neither', async () => {
    const before = await db().account.count()
    const given = { name: 'Bo', email: 'bo@people.example', password: 'passwordpassword' }
    await expect(signUp(given, from())).rejects.toMatchObject({
      faults: [{ field: 'password', code: 'password-known' }],
    })
    const taken = { name: 'Bo', email: 'ana@people.example', password: PASSWORD }
    await expect(signUp(taken, from())).rejects.toMatchObject({
      faults: [{ field: 'email', code: 'address-taken' }],
    })
    expect(await db().account.count()).toBe(before)
  })

  it('answers alike for a wrong password, an unknown address and an account without a password', async () => {
    const { email } = await person()
    const link = await makePerson()
    const refusals = await Promise.all(
      [email, 'nobody@people.example', link.email].map((email) =>
        signInWithPassword({ email, password: 'not the right one' }, from('192.0.2.2')).catch((error) => ({
          message: error.message,
          faults: error.faults,
        })),
      ),
    )
    expect(new Set(refusals.map((refusal) => JSON.stringify(refusal))).size).toBe(1)
  })

  it('stores digests of the session and the password, not what the browser carries or somebody typed', async () => {
    const { email } = await person()
    const sid = await signInWithPassword({ email, password: PASSWORD }, from())
    const stored = JSON.stringify(
      await db().account.findFirst({ where: { email }, include: { sessions: true } }),
    )
    expect(stored).not.toContain(sid)
    expect(stored).not.toContain(PASSWORD)
    expect(JSON.stringify(await db().audit.findMany())).not.toMatch(/people\.example|lime and|Ana/)
  })
})

describe('limits on guessing', () => {
  it('stops one address at one account after eight tries, and lets the owner in from elsewhere', async () => {
    const { email } = await person()
    const wrong = () => signInWithPassword({ email, password: 'not the right one' }, from('198.51.100.1'))
    for (let tried = 0; tried < 8; tried += 1)
      await expect(wrong()).rejects.toMatchObject({ code: 'invalid' })
    await expect(wrong()).rejects.toMatchObject({ code: 'too-many' })
    const right = { email, password: PASSWORD }
    await expect(signInWithPassword(right, from('198.51.100.1'))).rejects.toMatchObject({ code: 'too-many' })
    expect(await signInWithPassword(right, from('198.51.100.2'))).toBeTypeOf('string')
  })

  it('begins to count again once the owner was let in', async () => {
    const { email } = await person()
    for (let round = 0; round < 3; round += 1) {
      for (let tried = 0; tried < 4; tried += 1)
        await signInWithPassword({ email, password: 'not the right one' }, from('198.51.100.3')).catch(
          () => {},
        )
      expect(await signInWithPassword({ email, password: PASSWORD }, from('198.51.100.3'))).toBeTypeOf(
        'string',
      )
    }
  })

  it('counts tries that come at once, each of them', async () => {
    const { email } = await person()
    const tries = await Promise.allSettled(
      Array.from({ length: 20 }, () =>
        signInWithPassword({ email, password: 'not the right one' }, from('198.51.100.4')),
      ),
    )
    const codes = tries.map((one) => (one.status === 'rejected' ? one.reason.code : 'in'))
    expect(codes.filter((code) => code === 'invalid')).toHaveLength(8)
    expect(codes.filter((code) => code === 'too-many')).toHaveLength(12)
  })

  it('locks nobody out: not where they signed in before, and not elsewhere, however many guess', async () => {
    const { email } = await person()
    const device = withDevice(undefined, email)
    const guess = (address: string, over: object = {}) =>
      signInWithPassword({ email, password: 'not the right one' }, { ...from(address), ...over }).catch(
        (error) => error.code,
      )
    const right = { email, password: PASSWORD }
    // Two hundred tries from all over the place.
    await db().rateLimit.create({
      data: {
        bucket: bucketName('sign-in-crowd', email),
        count: 200,
        expiresAt: new Date(Date.now() + 60_000),
      },
    })
    // Each of the many has two tries left, and the next is refused.
    expect([await guess('203.0.113.1'), await guess('203.0.113.1'), await guess('203.0.113.1')]).toEqual([
      'invalid',
      'invalid',
      'too-many',
    ])
    // The owner gets in with a new browser from another network, and with a known one even from that of a guesser.
    expect(await signInWithPassword(right, from('203.0.113.2'))).toBeTypeOf('string')
    expect(await signInWithPassword(right, { ...from('203.0.113.1'), device })).toBeTypeOf('string')
    // A known browser guesses no more than others, and its mark is good for one account alone.
    for (let tried = 0; tried < 15; tried += 1) expect(await guess('203.0.113.3', { device })).toBe('invalid')
    expect(await guess('203.0.113.3', { device })).toBe('too-many')
    const other = await person()
    for (let tried = 0; tried < 8; tried += 1)
      await signInWithPassword(
        { email: other.email, password: 'not the right one' },
        { ...from('203.0.113.4'), device },
      ).catch(() => {})
    await expect(
      signInWithPassword({ email: other.email, password: PASSWORD }, { ...from('203.0.113.4'), device }),
    ).rejects.toMatchObject({ code: 'too-many' })
  })

  it('tells few addresses to be taken, whoever asks', async () => {
    const { email } = await person()
    const probe = (address: string) =>
      signUp({ name: 'Bo', email: address, password: PASSWORD }, from('203.0.113.50')).catch(
        (error) => error.code,
      )
    for (let asked = 0; asked < 3; asked += 1) expect(await probe(email)).toBe('conflict')
    // Now it tells nothing, whether the address is taken or not.
    expect(await probe(email)).toBe('too-many')
    expect(await probe('free@people.example')).toBe('too-many')
    expect(await db().account.count({ where: { email: 'free@people.example' } })).toBe(0)
    const session = await signedIn(await person())
    const move = (to: string) => changeOwnAddress(session, to).catch((error) => error.code)
    for (let asked = 0; asked < 3; asked += 1) expect(await move(email)).toBe('conflict')
    expect(await move('free@people.example')).toBe('too-many')
  })

  it('keeps no address in the database', async () => {
    expect(JSON.stringify(await db().rateLimit.findMany())).not.toMatch(/198\.51|people\.example/)
  })
})

describe('sessions', () => {
  it('are read on every request: ending one ends it at once, and no other', async () => {
    const mason = await person()
    const [kept, ended] = [await signedIn(mason), await signedIn(mason)]
    expect(await listSessions(kept.accountId)).toHaveLength(2)
    await endSessions(own(kept).actor, kept.accountId, { only: ended.sessionId })
    expect((await listSessions(kept.accountId)).map(({ id }) => id)).toEqual([kept.sessionId])
  })

  it('of somebody else cannot be ended', async () => {
    const [mine, theirs] = [await signedIn(await person()), await signedIn(await person())]
    expect(await endSessions(own(mine).actor, mine.accountId, { only: theirs.sessionId })).toBe(0)
    expect(await listSessions(theirs.accountId)).toHaveLength(1)
  })

  it('end everywhere when the password changes, with every open link; here a new one goes on', async () => {
    const mason = await person()
    const sids = await Promise.all(
      [1, 2, 3].map(() => signInWithPassword({ email: mason.email, password: PASSWORD }, from('192.0.2.5'))),
    )
    const here = (await sessionWith(sids[0] ?? '')) as SignedIn
    const links = await Promise.all([
      makeLink({ purpose: 'sign-in', email: mason.email, accountId: null }),
      makeLink({ purpose: 'confirm-address', email: 'thief@people.example', accountId: mason.id }),
    ])
    const sid = await changeOwnPassword(own(here), here, 'another good one', from())
    expect(await Promise.all(sids.map(sessionWith))).toEqual([null, null, null])
    expect(await sessionWith(sid)).toMatchObject({ key: mason.key })
    for (const link of links) expect(await openLink(secretOf(link), here)).toBeNull()
    await expect(
      signInWithPassword({ email: mason.email, password: PASSWORD }, from('192.0.2.5')),
    ).rejects.toMatchObject({ code: 'invalid' })
  })

  it('run out', async () => {
    const session = await signedIn(await person())
    await db().session.update({ where: { id: session.sessionId }, data: { expiresAt: new Date(0) } })
    expect(await listSessions(session.accountId)).toEqual([])
  })

  it('are found by the one cookie that counts, and a cookie that is none of ours is a guest', async () => {
    const mason = await person()
    const sid = await signInWithPassword({ email: mason.email, password: PASSWORD }, from())
    const value = await encodeSession(sid)
    const carried = (secure: boolean) => (name: string) =>
      name === sessionCookieName(secure) ? value : undefined
    for (const secure of [true, false]) {
      expect(await sessionOf(carried(secure), secure)).toMatchObject({ key: mason.key })
      // Over https another host may have planted the plain one; over http nobody has the other.
      expect(await sessionOf(carried(!secure), secure)).toBeNull()
      expect(await sessionOf(() => undefined, secure)).toBeNull()
      expect(await sessionOf(() => 'nonsense', secure)).toBeNull()
    }
    expect(actorOf(null)).toEqual({ kind: 'guest' })
  })
})

describe('links by mail', () => {
  const linkFor = async (email: string) =>
    secretOf(await makeLink({ purpose: 'sign-in', email, accountId: null }))

  it('sign a known address in and open an account for an unknown one, asking for a name alone', async () => {
    const known = await person()
    const first = await linkFor(known.email)
    expect(await openLink(first, null)).toMatchObject({ asks: 'nothing' })
    expect(await sessionWith((await redeemLink(first, {}, null, from())) ?? '')).toMatchObject({
      key: known.key,
      how: 'link',
    })
    const second = await linkFor('new@people.example')
    expect(await openLink(second, null)).toMatchObject({ asks: 'name' })
    await expect(redeemLink(second, {}, null, from())).rejects.toMatchObject({ code: 'invalid' })
    const sid = await redeemLink(second, { name: 'New' }, null, from())
    const session = await sessionWith(sid ?? '')
    expect(session).toMatchObject({ name: 'New', email: 'new@people.example', hasPassword: false })
    expect(session?.emailVerifiedAt).toBeInstanceOf(Date)
  })

  it('work once, also when they are opened twice at the same moment', async () => {
    const { email } = await person()
    const secret = await linkFor(email)
    const uses = await Promise.allSettled([1, 2, 3, 4].map(() => redeemLink(secret, {}, null, from())))
    expect(uses.filter(({ status }) => status === 'fulfilled')).toHaveLength(1)
  })

  it('run out, and go with the first that is used; one that somebody else asked for puts out none', async () => {
    const { email } = await person()
    const [older, newer] = [await linkFor(email), await linkFor(email)]
    await redeemLink(older, {}, null, from())
    expect(await openLink(newer, null)).toBeNull()
    const late = await linkFor(email)
    await db().token.update({ where: { digest: secretDigest(late) }, data: { expiresAt: new Date(0) } })
    expect(await openLink(late, null)).toBeNull()
    await expect(redeemLink(late, {}, null, from())).rejects.toMatchObject({ code: 'not-found' })
  })

  it('that end with an address that is confirmed leave a calendar nobody else can read', async () => {
    const squatted = await person({ confirmed: false })
    await makeCalendar(squatted.member)
    const before = (await calendarToken(squatted.key)) ?? ''
    await redeemLink(await linkFor(squatted.email), {}, null, from())
    expect(await calendarOwner(before)).toBeNull()
    // Closing an account ends it too.
    await makeCalendar(squatted.member)
    const token = (await calendarToken(squatted.key)) ?? ''
    await closeAccount({ actor: squatted.member, accountId: squatted.id })
    expect(await calendarOwner(token)).toBeNull()
  })

  it('take an address back from whoever opened an account in its name', async () => {
    const squatted = await person({ confirmed: false })
    const squatter = await signedIn(squatted)
    const sid = await redeemLink(await linkFor(squatted.email), {}, null, from())
    expect(await sessionWith(sid ?? '')).toMatchObject({ key: squatted.key, hasPassword: false })
    expect((await listSessions(squatter.accountId)).map(({ id }) => id)).not.toContain(squatter.sessionId)
  })

  it('confirm an address only for who is signed in to the account that asked', async () => {
    const mason = await person({ confirmed: false })
    const session = await signedIn(mason)
    const email = 'moved@people.example'
    const link = { purpose: 'confirm-address', email, accountId: session.accountId } as const
    const secret = secretOf(await makeLink(link))
    expect(await openLink(secret, null)).toMatchObject({ asks: 'sign-in' })
    const stranger = await signedIn(await person())
    for (const other of [null, stranger])
      await expect(redeemLink(secret, {}, other, from())).rejects.toMatchObject({ code: 'forbidden' })
    expect(await redeemLink(secret, {}, session, from())).toBeNull()
    expect(await personByKey(mason.key)).toMatchObject({ email, confirmed: true })
  })
})

describe('npm run sign-in-link', () => {
  it('gives the operator a link for an address that has an account, and for no other', async () => {
    const { email, key } = await person()
    const said: string[] = []
    vi.spyOn(console, 'log').mockImplementation((line: string) => said.push(line))
    expect(await signInLink([` ${email.toUpperCase()}`])).toBe(0)
    const secret = secretOf(/https?:\S+/.exec(said.join('\n'))?.[0] ?? null)
    expect(await sessionWith((await redeemLink(secret, {}, null, from())) ?? '')).toMatchObject({ key })
    await expect(signInLink(['nobody@people.example'])).rejects.toThrow(/No account has the address/)
    for (const args of [[], ['nobody']]) expect(() => signInLink(args)).toThrow(/Say for whom/)
  })
})

describe('prove(session, password)', () => {
  it('wants the password, or a sign-in by link that is fresh', async () => {
    const session = await signedIn(await person())
    await expect(prove(session, undefined)).rejects.toMatchObject({ code: 'invalid' })
    await expect(prove(session, 'not the right one')).rejects.toMatchObject({ code: 'invalid' })
    await prove(session, PASSWORD)
    await prove({ ...session, how: 'link' }, undefined)
    const stale = { ...session, how: 'link', createdAt: new Date(0) } as const
    await expect(prove(stale, undefined)).rejects.toMatchObject({ code: 'invalid' })
    await expect(prove({ ...stale, hasPassword: false }, undefined)).rejects.toMatchObject({
      faults: [{ field: 'current-password', code: 'sign-in-again' }],
    })
  })
})

describe('nameRoles(actor, naming)', () => {
  it('gives roles that hold from the next request, and takes them', async () => {
    const steward = await person({ roles: ['steward'] })
    const mason = await person()
    const session = await signedIn(mason)
    await nameRoles(steward.member, { person: mason.key, roles: ['contributor', 'reviewer'] })
    expect((await personByKey(mason.key))?.roles).toEqual(['contributor', 'reviewer'])
    expect((await db().session.count({ where: { id: session.sessionId } })) === 1).toBe(true)
    await nameRoles(steward.member, { person: mason.key, roles: [] })
    expect((await personByKey(mason.key))?.roles).toEqual([])
    const { lines } = await listActs({ subject: mason.key, actorKey: steward.key })
    expect(lines.map(({ act, detail }) => [act, (detail as { role: string }).role])).toEqual([
      ['take-role', 'reviewer'],
      ['take-role', 'contributor'],
      ['name-role', 'reviewer'],
    ])
  })

  it('refuses all but stewards, unknown people, and leaving a site without a steward', async () => {
    const reviewer = await person({ roles: ['contributor', 'reviewer'] })
    await expect(
      nameRoles(reviewer.member, { person: reviewer.key, roles: ['steward'] }),
    ).rejects.toMatchObject({ code: 'forbidden' })
    const { people } = await listPeople({ role: 'steward' })
    const [last, ...others] = people
    const actor = { kind: 'member', key: last?.key ?? '', roles: ['steward'] } as const
    await expect(nameRoles(actor, { person: 'nobody', roles: [] })).rejects.toMatchObject({
      code: 'not-found',
    })
    for (const { key } of others) await nameRoles(actor, { person: key, roles: [] })
    await expect(nameRoles(actor, { person: actor.key, roles: [] })).rejects.toMatchObject({
      code: 'conflict',
    })
  })

  it('leaves one of two last stewards who step down at the same moment', async () => {
    const before = await listPeople({ role: 'steward' })
    const [one, two] = [await person({ roles: ['steward'] }), await person({ roles: ['steward'] })]
    for (const { key } of before.people) await nameRoles(one.member, { person: key, roles: [] })
    const outcomes = await Promise.allSettled(
      [one, two].map(({ member, key }) => nameRoles(member, { person: key, roles: [] })),
    )
    expect(outcomes.map(({ status }) => status).sort()).toEqual(['fulfilled', 'rejected'])
    expect((await listPeople({ role: 'steward' })).people).toHaveLength(1)
  })
})

describe('renameAccount, setLanguage and closeAccount', () => {
  it('changes the name beside everything at once', async () => {
    const mason = await person()
    await renameAccount(own(await signedIn(mason)), 'Another')
    expect(await authorNames([mason.key, 'nobody'])).toEqual(new Map([[mason.key, 'Another']]))
  })

  it('keeps the language of the page where it was opened until another is chosen', async () => {
    const opened = async (language?: 'en' | 'es') => {
      const email = `${v4()}@people.example`
      const sid = await signUp(
        { name: 'Ana', email, password: PASSWORD },
        { ...from('192.0.2.88'), language },
      )
      return (await sessionWith(sid)) as SignedIn
    }
    const [spanish, plain] = [await opened('es'), await opened()]
    expect([spanish.language, plain.language]).toEqual(['es', 'en'])
    await setLanguage(own(spanish), 'en')
    await setLanguage(own(plain), 'es')
    expect([await languageOf(spanish.key), await languageOf(plain.key)]).toEqual(['en', 'es'])
  })

  it('takes name, address, password, roles, links and sessions away and keeps the key', async () => {
    const mason = await person()
    const session = await signedIn(mason)
    await makeLink({ purpose: 'confirm-address', email: 'x@people.example', accountId: mason.id })
    await closeAccount(own(session))
    const left = await db().account.findUniqueOrThrow({
      where: { id: mason.id },
      include: { grants: true, identities: true, sessions: true, tokens: true },
    })
    const gone = { grants: [], identities: [], sessions: [], tokens: [] }
    expect(left).toMatchObject({ key: mason.key, name: '', email: null, passwordHash: null, ...gone })
    expect(left.closedAt).toBeInstanceOf(Date)
    expect(await authorNames([mason.key])).toEqual(new Map([[mason.key, null]]))
    await expect(
      signInWithPassword({ email: mason.email, password: PASSWORD }, from('192.0.2.77')),
    ).rejects.toMatchObject({ code: 'invalid' })
    // The address is free again.
    await person({ email: mason.email })
  })

  it('refuses the only steward', async () => {
    const { people } = await listPeople({ role: 'steward' })
    const [last] = people
    const actor = { kind: 'member', key: last?.key ?? '', roles: ['steward'] } as const
    await expect(closeAccount({ actor, accountId: last?.id ?? '' })).rejects.toMatchObject({
      code: 'conflict',
    })
  })
})

describe('listPeople, listActs and actsDone', () => {
  it('page through everybody once, the newest first, and find by name, address and role', async () => {
    const seen: string[] = []
    for (let after: string | undefined; ; ) {
      const { people, next } = await listPeople({}, { limit: 3, after })
      seen.push(...people.map(({ id }) => id))
      if (next === null) break
      after = next
    }
    expect(seen).toEqual([...new Set(seen)].sort().reverse())
    expect(seen).toHaveLength(await db().account.count())
    await person({ name: '100% lime_person', email: 'odd@people.example' })
    for (const words of ['100% LIME', 'lime_p', 'ODD@'])
      expect((await listPeople({ words })).people.map(({ email }) => email)).toEqual(['odd@people.example'])
    expect((await listPeople({ words: 'l%me' })).people).toEqual([])
    await expect(listPeople({}, { after: 'nonsense' })).rejects.toMatchObject({ code: 'invalid' })
  })

  it('page through what was done, by act, person and subject', async () => {
    const { lines, next } = await listActs({ act: 'sign-in' }, { limit: 2 })
    expect(lines).toHaveLength(2)
    const more = await listActs({ act: 'sign-in' }, { limit: 2, after: next ?? undefined })
    expect(more.lines.some(({ id }) => lines.some((line) => line.id === id))).toBe(false)
    expect(await actsDone()).toEqual(
      expect.arrayContaining([
        'close-account',
        'confirm-address',
        'end-sessions',
        'name-role',
        'open-account',
      ]),
    )
  })

  it('the audit is never rewritten', async () => {
    await expect(db().$executeRawUnsafe(`UPDATE "Audit" SET act = 'x'`)).rejects.toThrow(/never rewritten/)
    await expect(db().$executeRawUnsafe('DELETE FROM "Audit"')).rejects.toThrow(/never rewritten/)
  })
})
