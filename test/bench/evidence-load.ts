import { rmSync } from 'node:fs'
import { Client } from 'pg'
import { findBinaries } from '#lib/db/embedded/binaries.ts'
import { prepareCluster } from '#lib/db/embedded/cluster.ts'
import { startServer } from '#lib/db/embedded/server.ts'
import { migrate } from '#lib/db/migrate/apply.ts'
import { DOCUMENT_FACETS } from '#lib/entry/facets.ts'
import { newFolder } from '#test/support/serve.ts'

/** Visits to a work, its baseline among them. */
export const VISITS = 4
/** Raise it when what is loaded changes: kept databases are then loaded again. */
const EDITION = 2

const pick = (list: readonly string[], by: string) =>
  `(ARRAY['${list.join("','")}'])[1 + (${by}) % ${list.length}]`
const FAMILIES = [
  ...['earth', 'earth-lime', 'air-lime', 'hydraulic-lime'],
  ...['pozzolanic-lime', 'natural-cement', 'cement-lime', 'gypsum-lime'],
]
/** What is told of case n, as SQL. */
const TOLD: Readonly<Record<string, string>> = {
  kind: `'case'`,
  unit: pick(['limestone', 'granite', 'brick-soft'], 'n'),
  wall: `'ashlar'`,
  use: `'pointing'`,
  family: pick(FAMILIES, 'n'),
  binder: `'lime-fat'`,
  method: `'putty'`,
  country: pick(['EE', 'SI', 'PT', 'AU'], 'n / 8'),
  region: `${pick(['EE', 'SI', 'PT', 'AU'], 'n / 8')} || ':r'`,
  rain: `'moderate'`,
  frost: pick(['frequent', 'occasional', 'none'], 'n / 32'),
  ground: `'free-draining'`,
  structure: `'farm-building'`,
  recipe: `'recipe-' || n % 2000`,
  disputed: `CASE WHEN n % 500 = 0 THEN 'yes' ELSE 'no' END`,
}

const fate = (day: string) => `(CASE WHEN ${day} <= watched THEN 'reached' WHEN n % 9 = 0 THEN 'competing'
  ELSE 'watched' END)::"Fate"`
const from = (day: string) => `CASE WHEN ${day} <= watched THEN (${day} / gap * gap)::int ELSE watched END`
const to = (day: string) =>
  `CASE WHEN ${day} <= watched THEN least(watched, (${day} / gap + 1) * gap)::int END`
const state = (years: number) => `CASE WHEN watched > ${years} * 365 AND n % ${years + 2} > 0
  THEN ((n * ${years} + 7) % 400) END`

const DOCUMENTS = `
  INSERT INTO "SearchDocument" (id, "entryId", kind, slug, title, folded, summary, body, stems, marks, facets, years,
    "publishedAt")
  SELECT n, gen_random_uuid(), 'case', 'case-' || n, 'Wall ' || n, 'wall ' || n, 'A wall.', '', '', '{}',
    ${DOCUMENT_FACETS.map((facet) => TOLD[facet] ?? `''`).join(` || E'\\x1e' || `)}, (n % 300) / 10.0, now()
  FROM generate_series(1, $1::int) n`

/**
 * Works at hazards of a few per cent a year, looked at every third of a year to two years up to \`watched\`; a tenth of
 * the walls stand in buildings of two.
 */
const OUTCOMES = `
  INSERT INTO "OutcomeIndex" ("caseEntryId", work, use, recipe, family, method, rows, materials, mixed, reporter,
    invented, interested, building, "baselineOn", "lastOn", "lastSeen", "watchedDays", contradicted, "unitFate",
    "unitFrom", "unitTo", "jointFate", "jointFrom", "jointTo", "lossFate", "lossDamaged", "lossFrom", "lossTo",
    "endHow", "endFrom", "endTo", "dryFrom", "dryTo", at0, at1, at2, at5, at10, at20)
  SELECT "entryId", 'w', 'pointing', ${TOLD.recipe}, ${TOLD.family}, 'putty', '{}', '{lime-fat}',
    ${pick(['as-stated', 'differs', 'not-told'], 'n')}, ${pick(['did-the-work', 'someone-else'], 'n')},
    true, n % 5 = 0, hashint4(n - CASE WHEN n % 20 = 19 THEN 1 ELSE 0 END), date '2000-01-01',
    date '2000-01-01' + watched, false, watched, false, ${fate('u')}, ${from('u')}, ${to('u')}, ${fate('j')},
    ${from('j')}, ${to('j')}, ${fate('l')}, CASE WHEN l <= watched THEN n % 2 = 0 END, ${from('l')}, ${to('l')},
    CASE WHEN n % 9 = 0 THEN 'replaced-other-reason' END, CASE WHEN n % 9 = 0 THEN watched END,
    CASE WHEN n % 9 = 0 THEN watched + 200 END, CASE WHEN n % 2 = 0 THEN gap * (n % 4) END,
    CASE WHEN n % 2 = 0 AND n % 3 > 0 THEN gap * (n % 4 + 1) END,
    0, ${state(1)}, ${state(2)}, ${state(5)}, ${state(10)}, ${state(20)}
  FROM (
    SELECT id AS n, "entryId", (365 + random() * 9000)::int AS watched, (100 + random() * 700)::int AS gap,
      (-ln(random()) * 365.25 / 0.02)::bigint AS u, (-ln(random()) * 365.25 / 0.05)::bigint AS j,
      (-ln(random()) * 365.25 / 0.03)::bigint AS l
    FROM "SearchDocument"
  ) c`

/** Two visits in a hundred were read by two people. */
const VISITED = `
  INSERT INTO "VisitIndex" ("entryId", slug, revision, "caseEntryId", work, "on", baseline, joint, unit, damp, season,
    "authorKey", invented, observer, others, photos)
  SELECT gen_random_uuid(), 'visit-' || id || '-' || k, 1, "entryId", 'w', date '2000-01-01' + 900 * k, k = 0, 'sound',
    'sound', 'dry', 'summer', 'someone', true, 'someone-else',
    CASE WHEN (id + k) % 50 = 0 THEN '{fine-cracks sound dry}'::text[] ELSE '{}' END, 0
  FROM "SearchDocument", generate_series(0, ${VISITS - 1}) k`

/** Where measured visits are held. */
export interface Places {
  /** Address of a database with so many made-up visits, loaded now where it holds none. */
  open(visits: number): Promise<string>
  close(): Promise<void>
}

/** On the server at this address, where they stay and are measured again as they are; else on one for once. */
export async function openPlaces(kept: string | undefined): Promise<Places> {
  if (kept !== undefined)
    return {
      open: (visits) =>
        open(kept, visits, (name) => Object.assign(new URL(kept), { pathname: `/${name}` }).href),
      close: async () => {},
    }
  const folder = newFolder('putlog-evidence-')
  const server = await startServer(prepareCluster(folder, findBinaries('package')), {
    fsync: 'off',
    max_wal_size: '4GB',
  })
  return {
    open: (visits) =>
      open(server.url('postgres', 'postgres'), visits, (name) => server.url(name, 'postgres')),
    async close() {
      await server.stop()
      rmSync(folder, { recursive: true, force: true })
    },
  }
}

async function open(server: string, visits: number, urlOf: (name: string) => string): Promise<string> {
  const name = `putlog_evidence_${visits}_${EDITION}`
  const url = urlOf(name)
  const known = await run(server, ['SELECT 1 FROM pg_database WHERE datname = $1', [name]])
  // The last table filled tells that all were.
  if (known > 0 && (await run(url, ['SELECT 1 FROM "SearchChange"'])) > 0) return url
  await run(server, [`DROP DATABASE IF EXISTS ${name}`], [`CREATE DATABASE ${name} TEMPLATE template0`])
  await migrate(url)
  const begun = performance.now()
  await run(
    url,
    ['SELECT setseed(0.5)'],
    [DOCUMENTS, [visits / VISITS]],
    [OUTCOMES],
    [VISITED],
    ['VACUUM (ANALYZE)'],
    ['INSERT INTO "SearchChange" (document) VALUES (NULL)'],
  )
  console.log(`${visits} visits loaded in ${Math.round((performance.now() - begun) / 1000)} s into ${name}`)
  return url
}

/** Runs statements in one session and resolves with the number of rows of the last. */
async function run(url: string, ...statements: [text: string, values?: unknown[]][]): Promise<number> {
  const client = new Client({ connectionString: url })
  await client.connect()
  try {
    let rows = 0
    for (const [text, values] of statements) rows = (await client.query(text, values)).rowCount ?? 0
    return rows
  } finally {
    await client.end()
  }
}
