import { db } from './client.ts'

/** A visit that somebody wants to make. */
export interface Due {
  readonly id: string
  readonly caseSlug: string
  readonly caseTitle: string
  readonly work: string
  /** `YYYY-MM-DD`. */
  readonly dueOn: string
  /** Day of a visit to that work around then or later, by anybody: then it is no longer due. */
  readonly seenOn: string | null
  readonly invented: boolean
}

/** So many days before the day count as the visit that was due. */
export const EARLY_DAYS = 60

/** All that somebody asked to be reminded of, the earliest first; 500 at most. */
export async function remindersOf(ownerKey: string): Promise<Due[]> {
  return db().$queryRaw<Due[]>`
    SELECT m.id::text AS id, c.slug AS "caseSlug", c.title AS "caseTitle", m.work, m."dueOn"::text AS "dueOn",
      (SELECT min(v."on")::text FROM "VisitIndex" v WHERE v."caseEntryId" = m."caseEntryId" AND v.work = m.work
        AND v."on" >= m."dueOn" - ${EARLY_DAYS}::int) AS "seenOn", c.invented
    FROM "Reminder" m JOIN "CaseIndex" c ON c."entryId" = m."caseEntryId"
    WHERE m."ownerKey" = ${ownerKey} ORDER BY m."dueOn", m.id LIMIT 500`
}

/** Whose calendar has this secret address; null when nobody's. */
export async function calendarOwner(token: string): Promise<string | null> {
  const found = await db().calendar.findUnique({ where: { token }, select: { ownerKey: true } })
  return found?.ownerKey ?? null
}

/** The secret part of somebody's calendar address; null before they asked for one. */
export async function calendarToken(ownerKey: string): Promise<string | null> {
  const found = await db().calendar.findUnique({ where: { ownerKey }, select: { token: true } })
  return found?.token ?? null
}
