import { db } from '#lib/db/client.ts'
import { EARLY_DAYS } from '#lib/db/reminders.ts'
import type { WrittenKind } from '#lib/entry/body.ts'
import type { Language } from '#lib/entry/languages.ts'
import type { NoticeKind } from '#lib/entry/notices.ts'

/** What one mail tells of. */
export interface MailNews {
  readonly what: NoticeKind | 'due'
  readonly to: string
  /** Of whoever reads it. */
  readonly language: Language
  readonly kind: WrittenKind
  readonly slug: string
  readonly title: string
  /** Of a reminder: the day a visit is due, and the work. */
  readonly dueOn: string | null
  readonly work: string | null
}

/** A sender that is silent for so long is gone, and another takes over: far longer than handing over one mail takes. */
const LEASE_S = 600
/** So many refusals one after the other are the mail server's, not the addresses': the turn ends. */
const MOST_FAILED = 3
/** For so many days after it was due a reminder is still sent. Afterwards it stands in the list of visits due alone. */
const REMIND_DAYS = 120

interface Claimed extends MailNews {
  readonly id: string
}

/**
 * Sends what is due by mail: notices that nobody has read yet, and reminders whose day has come and whose visit nobody
 * has made. Each is taken under a lease, one at a time, so that any number of servers share the work and none sends
 * what another is sending. One whose mail was refused is tried again, after ten minutes and each time twice as long
 * later, a day at most. Only confirmed addresses of open accounts are written to.
 *
 * @param send answers whether the mail was taken
 * @returns how many were sent
 */
export async function mailOut(send: (news: MailNews) => Promise<boolean>): Promise<number> {
  let [sent, failed] = [0, 0]
  for (const table of ['Notice', 'Reminder'] as const)
    while (failed < MOST_FAILED) {
      const [claimed] = table === 'Notice' ? await claimNotice() : await claimReminder()
      if (claimed === undefined) break
      const { id, ...news } = claimed
      if (!(await send(news))) {
        failed += 1
        continue
      }
      failed = 0
      sent += 1
      const done = { where: { id }, data: { mailedAt: new Date() } }
      // Taken out by its owner meanwhile, it is not there to be marked.
      await (table === 'Notice' ? db().notice.updateMany(done) : db().reminder.updateMany(done))
    }
  return sent
}

const claimNotice = () => db().$queryRaw<Claimed[]>`
  UPDATE "Notice" n SET lease = now() + make_interval(secs => least(${LEASE_S} * 2 ^ least(n.tries, 20), 86400)),
    tries = n.tries + 1
  FROM (
    SELECT o.id, a.email, a.language FROM "Notice" o
    JOIN "Account" a ON a.key = o."forKey" AND a."closedAt" IS NULL AND a."emailVerifiedAt" IS NOT NULL
      AND a.email IS NOT NULL
    WHERE o."mailedAt" IS NULL AND o."readAt" IS NULL AND (o.lease IS NULL OR o.lease < now())
      AND o.at > now() - interval '14 days'
    ORDER BY o.at LIMIT 1 FOR UPDATE OF o SKIP LOCKED
  ) due, "Entry" e
  LEFT JOIN LATERAL (SELECT r.body FROM "Revision" r WHERE r."entryId" = e.id ORDER BY r.number DESC LIMIT 1) r ON true
  WHERE n.id = due.id AND e.id = n."entryId"
  RETURNING n.id::text AS id, n.what, due.email AS "to", due.language, e.kind::text AS kind, e.slug,
    coalesce(r.body ->> 'title', e.slug) AS title, NULL::text AS "dueOn", NULL::text AS work`

const claimReminder = () => db().$queryRaw<Claimed[]>`
  UPDATE "Reminder" n SET lease = now() + make_interval(secs => least(${LEASE_S} * 2 ^ least(n.tries, 20), 86400)),
    tries = n.tries + 1
  FROM (
    SELECT o.id, a.email, a.language, c.slug, c.title FROM "Reminder" o
    JOIN "Account" a ON a.key = o."ownerKey" AND a."closedAt" IS NULL AND a."emailVerifiedAt" IS NOT NULL
      AND a.email IS NOT NULL
    JOIN "CaseIndex" c ON c."entryId" = o."caseEntryId"
    WHERE o."mailedAt" IS NULL AND o."dueOn" BETWEEN current_date - ${REMIND_DAYS}::int AND current_date
      AND (o.lease IS NULL OR o.lease < now())
      AND NOT EXISTS (SELECT FROM "VisitIndex" v WHERE v."caseEntryId" = o."caseEntryId" AND v.work = o.work
        AND v."on" >= o."dueOn" - ${EARLY_DAYS}::int)
    ORDER BY o."dueOn" LIMIT 1 FOR UPDATE OF o SKIP LOCKED
  ) due
  WHERE n.id = due.id
  RETURNING n.id::text AS id, 'due' AS what, due.email AS "to", due.language, 'case' AS kind, due.slug, due.title,
    n."dueOn"::text AS "dueOn", n.work`
