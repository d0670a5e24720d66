import { latestChange } from '#lib/db/search/read.ts'
import { type RecordSegment, recordSegment } from './record.ts'

/**
 * Runs a search on the record as it is now: what was published before the call is in the answer, and what was
 * withdrawn is not. A search tells the last change that it met in the database; where the record in memory was
 * behind that, it catches up and the search is done again.
 */
export async function current<T>(
  work: (record: RecordSegment) => Promise<{ change: number; value: T }>,
): Promise<T> {
  const record = await recordSegment()
  const known = record.change
  const first = await work(record)
  if (first.change === known && record.change === known) return first.value
  return (await work(await recordSegment(first.change))).value
}

/** {@link current} for a search that reads nothing else of the database. */
export const now = <T>(work: (record: RecordSegment) => Promise<T>): Promise<T> =>
  current(async (record) => {
    const [value, change] = await Promise.all([work(record), latestChange()])
    return { change, value }
  })
