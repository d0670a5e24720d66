import { randomBytes } from 'node:crypto'
import { v7 } from 'uuid'
import { z } from 'zod'
import type { Actor } from '#lib/access/actor.ts'
import { must } from '#lib/access/policy.ts'
import { db } from '#lib/db/client.ts'
import { readBody } from '#lib/entry/body.ts'
import { lastDayOf, utcTime } from '#lib/entry/dates.ts'
import { day, slug } from '#lib/entry/fields.ts'
import { Refusal } from '#lib/errors.ts'
import { parse } from './parse.ts'

/** Years after the end of a work that one may be reminded at. */
export const REMIND_YEARS = ['1', '2', '5', '10'] as const

const wish = z.strictObject({
  caseSlug: slug,
  work: slug,
  when: z.enum([...REMIND_YEARS, 'date']),
  /** Where `when` is `date`. */
  on: day.optional(),
})
export type Wish = z.infer<typeof wish>

/** Reminders that one account may have. */
const MOST = 500

/**
 * Asks to be reminded of a visit: so many years after the work was finished, or on a date.
 *
 * @returns the day it is due
 * @throws Refusal `forbidden`; `invalid` for a work that is not there or a day that is past; `conflict` when there are
 *   too many
 */
export async function addReminder(actor: Actor, given: Wish): Promise<string> {
  const { key: ownerKey } = must(actor, 'remind', undefined)
  const { caseSlug, work, when, on } = parse(wish, given)
  const found = await db().entry.findFirst({
    where: { slug: caseSlug, kind: 'case' },
    select: { id: true, published: { select: { body: true, shape: true } } },
  })
  if (!found?.published) throw fault({ field: 'caseSlug', code: 'unknown', value: caseSlug })
  const body = readBody('case', found.published.body, found.published.shape)
  const told = body.works.find(({ id }) => id === work)
  if (told === undefined) throw fault({ field: 'work', code: 'unknown', value: work })
  if (when === 'date' && on === undefined) throw fault({ field: 'on', code: 'missing' })
  const dueOn = when === 'date' && on !== undefined ? on : yearsAfter(lastDayOf(told.finished), Number(when))
  const today = new Date().toISOString().slice(0, 10)
  if (dueOn < today)
    throw fault({ field: when === 'date' ? 'on' : 'when', code: 'in-the-past', value: dueOn, limit: today })
  if ((await db().reminder.count({ where: { ownerKey } })) >= MOST)
    throw new Refusal('conflict', 'You have as many reminders as one may have: take some out first.')
  const row = { ownerKey, caseEntryId: found.id, work, dueOn: new Date(`${dueOn}T00:00:00Z`) }
  await db().reminder.createMany({
    data: [{ id: v7(), ...row, createdAt: new Date() }],
    skipDuplicates: true,
  })
  return dueOn
}

const fault = (one: { field: string; code: string; value?: string; limit?: string }) =>
  new Refusal('invalid', 'The reminder cannot be set.', [one])

/** The same day so many years on; 29 February becomes the last day of the month. */
export function yearsAfter(from: string, years: number): string {
  const [year = 0, month = 1, date = 1] = from.split('-').map(Number)
  const last = new Date(utcTime(year + years, month, 0)).getUTCDate()
  return new Date(utcTime(year + years, month - 1, Math.min(date, last))).toISOString().slice(0, 10)
}

/** Takes a reminder of one's own out; nothing happens where there is none. */
export async function removeReminder(actor: Actor, given: { id: string }): Promise<void> {
  const { key: ownerKey } = must(actor, 'remind', undefined)
  const { id } = parse(z.strictObject({ id: z.uuid() }), given)
  await db().reminder.deleteMany({ where: { id, ownerKey } })
}

/** Gives one's calendar a new secret address; the old one, if there was one, answers no more. */
export async function makeCalendar(actor: Actor): Promise<void> {
  const { key: ownerKey } = must(actor, 'remind', undefined)
  const row = { token: randomBytes(24).toString('base64url'), createdAt: new Date() }
  await db().calendar.upsert({ where: { ownerKey }, create: { ownerKey, ...row }, update: row })
}

/** Marks all that one was told as read. */
export async function readNotices(actor: Actor): Promise<void> {
  const { key: forKey } = must(actor, 'remind', undefined)
  await db().notice.updateMany({ where: { forKey, readAt: null }, data: { readAt: new Date() } })
}
