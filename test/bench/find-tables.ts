import type { GeneratedCase } from './generate-cases.ts'

/** The tables that a load fills, and the columns of each. */
export const TABLE_COLUMNS = {
  CaseIndex:
    'entryId slug revision title summary country region units wall uses invented publishedAt visits yearsWatched ' +
    'latestOn latestJoint latestUnit latestDamp structure drivingRain frost ground salts latitude longitude families ' +
    'methods recipes rows materials disputed hasAnalysis hasPhotos secondObserver pastFive',
  SearchDocument:
    'id entryId kind slug title folded summary body stems marks facets years publishedAt latitude longitude',
  VisitIndex:
    'entryId slug revision caseEntryId work on baseline joint unit damp season authorKey observer others photos invented',
  SearchPosting: 'lexeme block ids',
  hand:
    'id slug revision title summary body country region units wall uses families methods materials rain frost salts ' +
    'ground structure joint unitState damp recipes rows quality disputed visits latestOn years published latitude ' +
    'longitude invented words',
  Entry: 'id kind slug',
  Revision: 'id entryId number body bodyDigest shape note authorKey state createdAt digest key',
  Decision: 'id entryId revisionId number outcome reviewerKey checklist words at digest key',
} as const
export type LoadedTable = keyof typeof TABLE_COLUMNS

/**
 * The table that somebody would make who had these questions and nothing else to answer: one row a case, its facets
 * as columns and arrays, its lexemes as a text-search vector, each with the index that serves it.
 */
export const HAND_TABLE = `CREATE TABLE hand (id int PRIMARY KEY, slug text, revision int, title text, summary text,
  body text, country text, region text, units text[], wall text, uses text[], families text[], methods text[],
  materials text[], rain text, frost text, salts text[], ground text, structure text, joint text, "unitState" text,
  damp text, recipes text[], rows text[], quality text[], disputed text, visits int, "latestOn" date, years float8,
  published timestamptz, latitude float8, longitude float8, invented boolean, words tsvector)`

export const HAND_INDEXES = [
  'CREATE INDEX ON hand USING gin (words) WITH (fastupdate = off)',
  'CREATE INDEX ON hand USING gin (units)',
  'CREATE INDEX ON hand USING gin (uses)',
  'CREATE INDEX ON hand (years DESC, id)',
  'CREATE INDEX ON hand (published DESC, id)',
  'CREATE INDEX ON hand (country, region)',
  'CREATE INDEX ON hand (wall)',
]

/** A case as a row of {@link HAND_TABLE}. */
export function handRow(id: number, { row, document, lexemes }: GeneratedCase) {
  const { drivingRain, latestJoint, latestUnit, latestDamp, disputed, yearsWatched, publishedAt, ...same } =
    row
  return {
    ...same,
    ...{ id, body: document.body, region: `${row.country}:${row.region}`, rain: drivingRain },
    ...{ joint: latestJoint, unitState: latestUnit, damp: latestDamp, disputed: disputed ? 'yes' : 'no' },
    ...{ years: yearsWatched, published: publishedAt },
    quality: [
      ...(row.hasAnalysis ? ['analysis'] : []),
      ...(row.hasPhotos ? ['photos'] : []),
      ...(row.secondObserver ? ['second-observer'] : []),
      ...(row.pastFive ? ['past-five'] : []),
    ],
    words: lexemes.map((lexeme) => `'${lexeme.replaceAll("'", "''").replaceAll('\\', '\\\\')}'`).join(' '),
  }
}
