import { v4 } from 'uuid'
import { beforeAll, describe, expect, it } from 'vitest'
import { db } from '#lib/db/client.ts'
import { calendarToken } from '#lib/db/reminders.ts'
import { closeAccount } from '#lib/workflow/account-close.ts'
import { exportAccount } from '#lib/workflow/account-export.ts'
import { claim } from '#lib/workflow/claim.ts'
import { decide } from '#lib/workflow/decide.ts'
import { makeCalendar } from '#lib/workflow/remind.ts'
import { nameRoles } from '#lib/workflow/role-name.ts'
import { submit } from '#lib/workflow/submit.ts'
import {
  makeCase,
  makeRecipe,
  makeSubmission,
  makeVisit,
  REFERENCES,
  REVIEWER,
  verdictOn,
} from '../support/make.ts'
import { makePerson, type Person } from '../support/people.ts'

let mason: Person
let other: Person
const now = new Date()
const draftOf = (ownerKey: string) => ({
  id: v4(),
  ownerKey,
  kind: 'recipe' as const,
  typed: {},
  createdAt: now,
  savedAt: now,
})

async function exported({ member, id }: Person): Promise<Record<string, Record<string, unknown>[]>> {
  let text = ''
  for await (const piece of exportAccount({ actor: member, accountId: id })) text += piece
  return JSON.parse(text)
}

beforeAll(async () => {
  mason = await makePerson({ password: 'lime and three of sand' })
  other = await makePerson()
  await submit(mason.member, makeSubmission({ slug: 'mine-0', body: makeRecipe() }), REFERENCES)
  await submit(other.member, makeSubmission({ slug: 'theirs', body: makeRecipe() }), REFERENCES)
  await db().draft.createMany({ data: [draftOf(mason.key), draftOf(other.key)] })
})

describe('exportAccount(own)', () => {
  it('holds all that is theirs and nothing of others, and no secret', async () => {
    const all = await exported(mason)
    expect(all.account).toMatchObject([{ key: mason.key, email: mason.email, name: mason.name }])
    expect(all.revisions).toMatchObject([{ slug: 'mine-0', body: { title: makeRecipe().title } }])
    expect(all.drafts).toHaveLength(1)
    expect(all.roles).toMatchObject([{ role: 'contributor' }])
    expect(all.done?.map(({ act }) => act)).toContain('open-account')
    const text = JSON.stringify(all)
    for (const secret of [other.key, other.email, 'argon2id', 'theirs']) expect(text).not.toContain(secret)
  })

  it('holds more rows than are fetched at once, each once', async () => {
    const data = Array.from({ length: 230 }, () => draftOf(mason.key))
    await db().draft.createMany({ data })
    const { drafts = [] } = await exported(mason)
    expect(new Set(drafts.map(({ id }) => id)).size).toBe(231)
    expect(drafts).toHaveLength(231)
  })
})

describe('exportAccount(own) of one whom others did something to', () => {
  it('says what was done and not who did it', async () => {
    const [person, steward] = [await makePerson(), await makePerson({ roles: ['steward'] })]
    await nameRoles(steward.member, { person: person.key, roles: ['contributor', 'reviewer'] })
    await makeCalendar(person.member)
    const all = await exported(person)
    expect(all.done).toMatchObject([
      { act: 'open-account', actorKey: person.key },
      { act: 'name-role', actorKey: null, detail: { role: 'reviewer' } },
    ])
    expect(all.calendar).toHaveLength(1)
    const token = (await calendarToken(person.key)) ?? ''
    for (const secret of [steward.key, token]) expect(JSON.stringify(all)).not.toContain(secret)
  })
})

describe('nameRoles(actor, naming)', () => {
  it('puts back what a reviewer had in hand', async () => {
    const [person, steward] = [
      await makePerson({ roles: ['reviewer'] }),
      await makePerson({ roles: ['steward'] }),
    ]
    const { revisionId } = await db()
      .revision.findFirstOrThrow()
      .then(({ id }) => ({ revisionId: id }))
    await claim(person.member, { revisionId })
    await nameRoles(steward.member, { person: person.key, roles: ['reviewer', 'contributor'] })
    expect(await db().claim.count({ where: { reviewerKey: person.key } })).toBe(1)
    await nameRoles(steward.member, { person: person.key, roles: ['contributor'] })
    expect(await db().claim.count({ where: { reviewerKey: person.key } })).toBe(0)
  })
})

describe('closeAccount(own)', () => {
  it('takes the photos away that they alone sent and nothing shows', async () => {
    const [person, friend] = [await makePerson(), await makePerson()]
    const add = (mark: string, uploaders: string[]) =>
      db().photo.create({
        data: {
          sha256: mark.repeat(64),
          width: 1,
          height: 1,
          bytes: 1,
          sizes: [1],
          likeness: '0'.repeat(16),
          madeFrom: mark.repeat(64),
          uploaders,
          createdAt: now,
        },
      })
    const [unshown, shared, shown] = [
      await add('a', [person.key]),
      await add('b', [person.key, friend.key]),
      await add('c', [person.key]),
    ]
    await submit(
      person.member,
      makeSubmission({ kind: 'case', slug: 'shown-wall', body: makeCase() }),
      REFERENCES,
    )
    await decide(REVIEWER, { ...verdictOn({ slug: 'shown-wall', number: 1 }) })
    const body = { ...makeVisit({ case: 'shown-wall' }), photos: [{ sha256: shown.sha256, alt: 'East.' }] }
    await submit(person.member, makeSubmission({ kind: 'visit', slug: 'shown-visit', body }), REFERENCES)
    await closeAccount({ actor: person.member, accountId: person.id })
    const left = await db().photo.findMany({ select: { sha256: true }, orderBy: { sha256: 'asc' } })
    expect(left.map(({ sha256 }) => sha256)).toEqual([shared.sha256, shown.sha256])
    expect(left).not.toContainEqual({ sha256: unshown.sha256 })
  })

  it('takes drafts away and leaves what was submitted under the key', async () => {
    await closeAccount({ actor: mason.member, accountId: mason.id })
    expect(await db().draft.count({ where: { ownerKey: mason.key } })).toBe(0)
    expect(await db().draft.count({ where: { ownerKey: other.key } })).toBe(1)
    expect(await db().revision.count({ where: { authorKey: mason.key } })).toBe(1)
    expect(await exported(mason)).toMatchObject({ account: [{ name: '', email: null }], drafts: [] })
  })
})
