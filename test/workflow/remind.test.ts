import { describe, expect, it } from 'vitest'
import { db } from '#lib/db/client.ts'
import { calendarOwner, calendarToken, remindersOf } from '#lib/db/reminders.ts'
import { type MailNews, mailOut } from '#lib/workflow/mail-out.ts'
import { addReminder, makeCalendar, removeReminder, yearsAfter } from '#lib/workflow/remind.ts'
import { makeCase, makeVisit, makeWork, OTHER, publish } from '../support/make.ts'
import { makePerson } from '../support/people.ts'

const year = new Date().getUTCFullYear()
const works = [makeWork({ started: String(year - 1), finished: `${year - 1}-05` })]

describe('addReminder(actor, wish)', () => {
  it('counts the years from the last day that the work can have ended on', async () => {
    await publish('case', 'young-wall', makeCase({ works }))
    const wish = { caseSlug: 'young-wall', work: 'repointing', when: '5' as const }
    expect(await addReminder(OTHER, wish)).toBe(`${year + 4}-05-31`)
    // Asked for again, it is there once.
    await addReminder(OTHER, wish)
    expect(await remindersOf(OTHER.key)).toMatchObject([
      { caseSlug: 'young-wall', work: 'repointing', dueOn: `${year + 4}-05-31`, seenOn: null },
    ])
  })

  it('refuses a day that is past, a work that is not there, and a date that was not given', async () => {
    await publish('case', 'old-wall', makeCase())
    const wish = { caseSlug: 'old-wall', work: 'repointing', when: '10' as const }
    const faultsOf = (given: Parameters<typeof addReminder>[1]) =>
      addReminder(OTHER, given).then(
        () => [],
        (error) => error.faults,
      )
    expect(await faultsOf(wish)).toMatchObject([{ field: 'when', code: 'in-the-past', value: '2020-06-30' }])
    expect(await faultsOf({ ...wish, work: 'no-such' })).toMatchObject([{ field: 'work', code: 'unknown' }])
    expect(await faultsOf({ ...wish, when: 'date' })).toMatchObject([{ field: 'on', code: 'missing' }])
    await expect(addReminder({ kind: 'guest' }, wish)).rejects.toMatchObject({ code: 'forbidden' })
  })

  it('is met by a visit of about that day, by anybody, and goes when it is taken out', async () => {
    await publish('case', 'met-wall', makeCase({ works: [makeWork()] }))
    const due = new Date(Date.now() + 20 * 86_400_000).toISOString().slice(0, 10)
    await addReminder(OTHER, { caseSlug: 'met-wall', work: 'repointing', when: 'date', on: due })
    const today = new Date().toISOString().slice(0, 10)
    await publish('visit', 'met-visit', makeVisit({ case: 'met-wall', on: today, baseline: false }))
    const met = (await remindersOf(OTHER.key)).find(({ caseSlug }) => caseSlug === 'met-wall')
    expect(met?.seenOn).toBe(today)
    await removeReminder(OTHER, { id: met?.id ?? '' })
    expect((await remindersOf(OTHER.key)).some(({ caseSlug }) => caseSlug === 'met-wall')).toBe(false)
  })
})

describe('yearsAfter(day, years)', () => {
  it.each([
    ['2024-02-29', 1, '2025-02-28'],
    ['2024-02-29', 4, '2028-02-29'],
    ['2020-06-30', 10, '2030-06-30'],
    ['0096-02-29', 4, '0100-02-28'],
  ])('%s and %i years on is %s', (from, years, to) => {
    expect(yearsAfter(from, years)).toBe(to)
  })
})

describe('makeCalendar(actor)', () => {
  it('gives an address that nobody guesses, and a new one that takes the place of the old', async () => {
    await makeCalendar(OTHER)
    const first = await calendarToken(OTHER.key)
    expect(first).toMatch(/^[\w-]{32}$/)
    await makeCalendar(OTHER)
    expect(await calendarOwner(first ?? '')).toBeNull()
    expect(await calendarOwner((await calendarToken(OTHER.key)) ?? '')).toBe(OTHER.key)
  })
})

describe('mailOut(send)', () => {
  it('sends each reminder and notice once, to confirmed addresses alone, whoever else sends', async () => {
    const [known, unconfirmed] = [await makePerson(), await makePerson({ confirmed: false })]
    await publish('case', 'mailed-wall', makeCase({ works }))
    const on = new Date().toISOString().slice(0, 10)
    for (const { member } of [known, unconfirmed])
      await addReminder(member, { caseSlug: 'mailed-wall', work: 'repointing', when: 'date', on })
    const sent: MailNews[] = []
    const send = async (news: MailNews) => {
      sent.push(news)
      return true
    }
    const counts = await Promise.all([mailOut(send), mailOut(send), mailOut(send)])
    expect(sent).toMatchObject([{ what: 'due', to: known.email, slug: 'mailed-wall', dueOn: on }])
    expect(counts.reduce((sum, count) => sum + count)).toBe(1)
    expect(await mailOut(send)).toBe(0)
  })

  it('tries again what was not taken, once its lease is out', async () => {
    const person = await makePerson()
    const on = new Date().toISOString().slice(0, 10)
    await addReminder(person.member, { caseSlug: 'mailed-wall', work: 'repointing', when: 'date', on })
    expect(await mailOut(async () => false)).toBe(0)
    expect(await mailOut(async () => true)).toBe(0)
    await db().reminder.updateMany({ where: { ownerKey: person.key }, data: { lease: new Date(0) } })
    expect(await mailOut(async () => true)).toBe(1)
  })
})
