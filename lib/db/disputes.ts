import { type Db, db } from './client.ts'

/** A dispute that no reviewer has answered. */
export interface OpenDispute {
  /** Of the deed among all those of its entry. */
  readonly number: number
  readonly byKey: string
  readonly words: string
  readonly at: Date
}

/** The unanswered disputes of an entry, oldest first. An answer answers all that stood before it. */
export const openDisputes = (entryId: string, tx: Db = db()): Promise<OpenDispute[]> => tx.$queryRaw<
  OpenDispute[]
>`
  SELECT d.number, d."reviewerKey" AS "byKey", d.words, d.at FROM "Decision" d
  WHERE d."entryId" = ${entryId}::uuid AND d.outcome = 'dispute' AND d.number > (
    SELECT coalesce(max(a.number), 0) FROM "Decision" a
    WHERE a."entryId" = d."entryId" AND a.outcome IN ('settle', 'uphold')
  ) ORDER BY d.number`

/** Which of these entries somebody disputes now. */
export const disputedAmong = (entryIds: readonly string[]): Promise<ReadonlySet<string>> =>
  disputedEntries(db(), entryIds)

/** The same in a transaction. */
export async function disputedEntries(tx: Db, entryIds: readonly string[]): Promise<ReadonlySet<string>> {
  const rows = await tx.$queryRaw<{ entryId: string }[]>`
    SELECT d."entryId" FROM "Decision" d
    WHERE d."entryId" = ANY(${[...entryIds]}::uuid[]) AND d.outcome IN ('dispute', 'settle', 'uphold')
    GROUP BY d."entryId"
    HAVING max(d.number) FILTER (WHERE d.outcome = 'dispute')
      > coalesce(max(d.number) FILTER (WHERE d.outcome <> 'dispute'), 0)`
  return new Set(rows.map(({ entryId }) => entryId))
}
