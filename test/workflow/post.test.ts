import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { createInterface } from 'node:readline'
import { v4 } from 'uuid'
import { afterAll, beforeAll, beforeEach, describe, expect, it, vi } from 'vitest'
import { mailDue } from '#lib/cli/post.ts'
import { db } from '#lib/db/client.ts'
import { dispute } from '#lib/workflow/dispute.ts'
import { addReminder } from '#lib/workflow/remind.ts'
import { withdraw } from '#lib/workflow/withdraw.ts'
import { makeCase, makeVisit, makeWork, OTHER, publish, STEWARD } from '../support/make.ts'
import { makePerson } from '../support/people.ts'
import { bodyOf, startSmtp } from '../support/smtp.ts'

const SITE = 'https://mortars.example'
const today = new Date().toISOString().slice(0, 10)
const wish = (caseSlug: string) => ({ caseSlug, work: 'repointing', when: 'date' as const, on: today })
/** As if the time that a refused mail waits were over. */
const waitOver = async () => {
  for (const table of ['Notice', 'Reminder'])
    await db().$executeRawUnsafe(`UPDATE "${table}" SET lease = now() - interval '1 second'`)
}

let smtp: Awaited<ReturnType<typeof startSmtp>>
beforeAll(async () => {
  smtp = await startSmtp()
  smtp.setUp()
  await publish('case', 'due-wall', makeCase({ works: [makeWork()] }))
})
afterAll(async () => {
  smtp.takeAway()
  await smtp.stop()
})
beforeEach(async () => {
  await db().reminder.deleteMany()
  await db().notice.deleteMany()
  smtp.got.splice(0)
  smtp.refuse(false)
})

/** Another server of the site, which sends what is due once it is told to. */
async function otherServer() {
  const script = `
    import { mailDue } from './lib/cli/post.ts'
    import { closeDb, db } from './lib/db/client.ts'
    await db().$queryRaw\`SELECT 1\`
    console.log('ready')
    process.stdin.once('data', async () => {
      await mailDue('${SITE}')
      await closeDb()
      process.exit(0)
    })`
  const child = spawn(process.execPath, ['--import', 'tsx', '--input-type=module', '-e', script], {
    stdio: ['pipe', 'pipe', 'inherit'],
    env: process.env,
  })
  await once(createInterface(child.stdout), 'line')
  return {
    send: async () => {
      child.stdin.write('now\n')
      expect((await once(child, 'exit'))[0]).toBe(0)
    },
  }
}

describe('the post, through a mail server', () => {
  it('brings a reminder to its owner, in words, with the way to the wall and to the list', async () => {
    const person = await makePerson()
    await addReminder(person.member, wish('due-wall'))
    await mailDue(SITE)
    const [mail, ...more] = smtp.got
    expect(more).toEqual([])
    expect(mail).toMatchObject({ from: 'site@mortars.example', to: [person.email] })
    expect(mail?.text).toMatch(/^Subject: Putlog: Barn wall\r?$/m)
    const told = mail && bodyOf(mail)
    expect(told).toContain(`${SITE}/cases/due-wall#work-repointing`)
    expect(told).toContain(`${SITE}/due`)
  })

  it('speaks the language of its reader, and leads to pages in it', async () => {
    const [reader, other] = [await makePerson({ language: 'es' }), await makePerson()]
    for (const { member } of [reader, other]) await addReminder(member, wish('due-wall'))
    await mailDue(SITE)
    const mailTo = (email: string) => {
      const mail = smtp.got.find(({ to }) => to[0] === email)
      return mail === undefined ? '' : bodyOf(mail)
    }
    const inWords = (language: string) =>
      new Date().toLocaleDateString(language, { dateStyle: 'long', timeZone: 'UTC' })
    expect(mailTo(reader.email)).toContain(`Hay una visita a «Barn wall» pendiente desde el ${inWords('es')}`)
    expect(mailTo(reader.email)).toContain(`${SITE}/es/cases/due-wall#work-repointing`)
    expect(mailTo(reader.email)).toContain(`${SITE}/es/due`)
    expect(mailTo(other.email)).toContain(`is due since ${inWords('en-GB')}`)
    expect(mailTo(other.email)).not.toContain('/es/')
  })

  it('brings each once, also where two servers and this one send at the same moment', async () => {
    const people = await Promise.all(Array.from({ length: 12 }, () => makePerson()))
    for (const { member } of people) await addReminder(member, wish('due-wall'))
    const servers = await Promise.all([otherServer(), otherServer()])
    await Promise.all([...servers.map(({ send }) => send()), mailDue(SITE)])
    expect(smtp.got.map(({ to }) => to[0]).sort()).toEqual(people.map(({ email }) => email).sort())
    await mailDue(SITE)
    expect(smtp.got).toHaveLength(12)
  })

  it('tries again what the mail server refused, later each time, and loses nothing', async () => {
    const person = await makePerson()
    await addReminder(person.member, wish('due-wall'))
    smtp.refuse(true)
    const waits: number[] = []
    for (let tried = 0; tried < 3; tried += 1) {
      await mailDue(SITE)
      const { lease } = await db().reminder.findFirstOrThrow({ where: { ownerKey: person.key } })
      waits.push(Math.round(((lease?.getTime() ?? 0) - Date.now()) / 60_000))
      await mailDue(SITE)
      await waitOver()
    }
    expect(waits).toEqual([10, 20, 40])
    expect(smtp.got).toEqual([])
    smtp.refuse(false)
    await mailDue(SITE)
    expect(smtp.got).toMatchObject([{ to: [person.email] }])
    vi.mocked(console.error).mockClear()
  })

  it('asks a server that takes nothing three times in a turn, and sends all once it does', async () => {
    const people = await Promise.all(Array.from({ length: 5 }, () => makePerson()))
    for (const { member } of people) await addReminder(member, wish('due-wall'))
    smtp.takeAway()
    process.env.SMTP_URL = 'smtp://127.0.0.1:9'
    process.env.MAIL_FROM = 'site@mortars.example'
    await mailDue(SITE)
    expect(vi.mocked(console.error).mock.calls).toHaveLength(3)
    expect(await db().reminder.count({ where: { tries: 0 } })).toBe(2)
    smtp.setUp()
    await mailDue(SITE)
    await waitOver()
    await mailDue(SITE)
    expect(smtp.got.map(({ to }) => to[0]).sort()).toEqual(people.map(({ email }) => email).sort())
    vi.mocked(console.error).mockClear()
  })

  it('is not held up by visits that were made, walls that were taken down, and addresses that nobody confirmed', async () => {
    const [person, unconfirmed] = [await makePerson(), await makePerson({ confirmed: false })]
    for (let wall = 0; wall < 3; wall += 1) {
      await publish('case', `gone-${wall}`, makeCase({ works: [makeWork()] }))
      await addReminder(person.member, wish(`gone-${wall}`))
      await withdraw(STEWARD, { key: v4(), slug: `gone-${wall}`, words: 'Asked for.' })
    }
    await publish('case', 'seen-wall', makeCase({ works: [makeWork()] }))
    await addReminder(person.member, wish('seen-wall'))
    await publish('visit', 'seen-visit', makeVisit({ case: 'seen-wall', on: today, baseline: false }))
    await db().notice.deleteMany()
    await addReminder(unconfirmed.member, wish('due-wall'))
    await addReminder(person.member, wish('due-wall'))
    await mailDue(SITE)
    expect(smtp.got.map(({ to }) => to)).toEqual([[person.email]])
    expect(bodyOf(smtp.got[0] ?? { from: '', to: [], text: '' })).toContain('/cases/due-wall')
  })

  it('brings news of one’s own entries once, and none that was read before', async () => {
    const person = await makePerson()
    await db().notice.createMany({
      data: await Promise.all(
        ['published', 'erased', 'struck', 'photo-erased', 'approved'].map(async (what, index) => ({
          id: v4(),
          forKey: person.key,
          what,
          entryId: (await db().entry.findUniqueOrThrow({ where: { slug: 'due-wall' } })).id,
          number: index + 1,
          at: new Date(),
          readAt: what === 'published' ? new Date() : null,
        })),
      ),
    })
    await Promise.all([mailDue(SITE), mailDue(SITE)])
    const told = smtp.got.map(bodyOf)
    expect(told).toHaveLength(4)
    for (const words of [/erased a version/, /took your words off/, /erased a photo/, /approved a version/])
      expect(told.filter((text) => words.test(text))).toHaveLength(1)
  })
})

describe('a dispute', () => {
  it('is told to the author by mail', async () => {
    const person = await makePerson()
    await db().$executeRaw`UPDATE "Account" SET key = 'mason-1' WHERE id = ${person.id}::uuid`
    await dispute(OTHER, { key: v4(), slug: 'due-wall', words: 'It is brick.' })
    await mailDue(SITE)
    expect(smtp.got).toMatchObject([{ to: [person.email] }])
  })
})
