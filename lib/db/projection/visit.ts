import { readBody } from '#lib/entry/body.ts'
import type { VisitIndexModel } from '../../../prisma/generated/models.ts'
import type { Db } from '../client.ts'
import { entryIds, publishedRows } from './source.ts'

/** The index rows that these visits must have: one for each that is published. */
export async function visitRows(tx: Db, ids: readonly string[]): Promise<VisitIndexModel[]> {
  const sources = (await publishedRows(tx, 'visit', ids)).map((row) => ({
    ...row,
    body: readBody('visit', row.body, row.shape),
  }))
  const cases = await entryIds(
    tx,
    'case',
    sources.map(({ body }) => body.case),
  )
  return sources.flatMap(({ body, entryId, slug, revision, authorKey }) => {
    const caseEntryId = cases.get(body.case)
    if (caseEntryId === undefined) return []
    const { work, baseline, joint, unit, damp, season, daysSinceRain = null, invented } = body
    const observer = body.observer.who
    const others = (body.others ?? []).map((other) => `${other.joint} ${other.unit} ${other.damp}`)
    const photos = body.photos?.length ?? 0
    const on = new Date(`${body.on}T00:00:00Z`)
    const seen = { on, baseline, joint, unit, damp, season, daysSinceRain }
    const told = { observer, others, photos }
    return [{ entryId, slug, revision, caseEntryId, work, ...seen, ...told, authorKey, invented }]
  })
}
