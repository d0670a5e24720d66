import type { Client } from 'pg'
import type { GeneratedCase } from './generate-cases.ts'

/** A row of each of the record's own tables, for one published revision. */
export interface PublishedRows {
  readonly entry: object
  readonly revision: object
  readonly decision: object
}

/** What the record holds of a case and its visits, each published at its first revision. Digests chain nothing. */
export function* publishedRows({ row, body, visits }: GeneratedCase): Generator<PublishedRows> {
  yield rowsOf('case', row, body)
  for (const visit of visits)
    yield rowsOf(
      'visit',
      { entryId: visit.entryId, slug: visit.slug, publishedAt: row.publishedAt },
      {
        ...{ case: row.slug, work: visit.work, on: visit.on.toISOString().slice(0, 10) },
        ...{ baseline: visit.baseline, season: visit.season, joint: visit.joint, unit: visit.unit },
        ...{ damp: visit.damp, salts: [], readings: [], invented: true },
        observer: { who: visit.observer, how: 'From the ground.' },
      },
    )
}

function rowsOf(
  kind: 'case' | 'visit',
  { entryId, slug, publishedAt }: { entryId: string; slug: string; publishedAt: Date },
  body: object,
): PublishedRows {
  const [revision, decision] = [idBeside(entryId, '1'), idBeside(entryId, '2')]
  const digest = '0'.repeat(64)
  return {
    entry: { id: entryId, kind, slug },
    revision: {
      ...{
        id: revision,
        key: revision,
        entryId,
        number: 1,
        body,
        bodyDigest: digest,
        shape: 1,
        note: 'Made up.',
      },
      ...{ authorKey: 'made-up', state: 'published', createdAt: publishedAt, digest },
    },
    decision: {
      ...{ id: decision, key: decision, entryId, revisionId: revision, number: 1, outcome: 'publish' },
      ...{ reviewerKey: 'made-up-2', checklist: {}, words: 'Made up.', at: publishedAt, digest },
    },
  }
}

/** Points every entry at its one revision, as publishing does. */
export const publishAll = (client: Client) =>
  client.query(`UPDATE "Entry" e SET "publishedRevisionId" = r.id FROM "Revision" r WHERE r."entryId" = e.id`)

const idBeside = (id: string, digit: string) => `${digit}${id.slice(1)}`
