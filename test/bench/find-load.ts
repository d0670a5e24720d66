import { Client } from 'pg'
import { BLOCK, packIds } from '#lib/db/search/posting.ts'
import { startCopy } from './find-copy.ts'
import { publishAll, publishedRows } from './find-entries.ts'
import { HAND_INDEXES, HAND_TABLE, handRow, type LoadedTable, TABLE_COLUMNS } from './find-tables.ts'
import { generateCases } from './generate-cases.ts'

/** Raised when what is loaded changes: cases that were kept are then loaded again. */
const LOADED = 1

/** So many cases stand in the record's own tables too, evenly among all: those that are looked up one by one. */
export const WHOLE_CASES = 50_000
/** Every so-manieth case does. */
export const wholeStep = (count: number): number => Math.ceil(count / WHOLE_CASES)

const TABLES: readonly LoadedTable[] = ['CaseIndex', 'VisitIndex', 'SearchDocument', 'SearchPosting']

/** Whether this database holds so many generated cases, loaded to the end by this version of the loader. */
export async function isLoaded(url: string, count: number, seed: number): Promise<boolean> {
  const client = new Client({ connectionString: url })
  await client.connect()
  try {
    const { rows } = await client.query(`SELECT obj_description(to_regclass('hand'), 'pg_class') AS told`)
    return rows[0]?.told === marker(count, seed)
  } finally {
    await client.end()
  }
}

const marker = (count: number, seed: number) => `${count} cases of seed ${seed}, version ${LOADED}`

/** Fills a freshly migrated database and the hand-made table with generated cases, by COPY, and indexes them after. */
export async function loadCases(
  url: string,
  count: number,
  seed: number,
  say = (_: string) => {},
): Promise<void> {
  const client = new Client({ connectionString: url })
  await client.connect()
  try {
    await client.query(`SET maintenance_work_mem = '512MB'`)
    await client.query(HAND_TABLE)
    const indexes = await dropIndexes(client)
    await copyCases(url, count, seed, say)
    say('  rows written; indexing')
    await publishAll(client)
    for (const index of [...indexes, ...HAND_INDEXES]) await client.query(index)
    await client.query(`SELECT setval(pg_get_serial_sequence('"SearchDocument"', 'id'), ${count + 1})`)
    await client.query('INSERT INTO "SearchChange" (document) VALUES (NULL)')
    await client.query('VACUUM ANALYZE')
    await client.query('CHECKPOINT').catch(() => say('  no leave to write a checkpoint; going on without'))
    // Last, so that a load that was cut off is known.
    await client.query(`COMMENT ON TABLE hand IS '${marker(count, seed)}'`)
  } finally {
    await client.end()
  }
}

/** Drops what can be made again and resolves with the statements that do it. */
async function dropIndexes(client: Client): Promise<string[]> {
  const { rows } = await client.query<{ name: string; made: string }>(
    `SELECT i.indexname AS name, i.indexdef AS made FROM pg_indexes i WHERE i.schemaname = 'public'
     AND i.tablename = ANY($1) AND NOT EXISTS (SELECT FROM pg_constraint c WHERE c.conname = i.indexname)`,
    [[...TABLES, 'SearchWord']],
  )
  for (const { name } of rows) await client.query(`DROP INDEX "${name}"`)
  return rows.map(({ made }) => made)
}

async function copyCases(url: string, count: number, seed: number, say: (text: string) => void) {
  const copy = (table: LoadedTable) => startCopy(url, table, TABLE_COLUMNS[table].split(' '))
  const index = await copy('CaseIndex')
  const documents = await copy('SearchDocument')
  const visited = await copy('VisitIndex')
  const hand = await copy('hand')
  const postings = await copy('SearchPosting')
  const whole: ReturnType<typeof publishedRows>[] = []
  const words = new Map<string, number>()
  let block = new Map<string, number[]>()
  let id = 0
  const endBlock = async () => {
    const number = Math.floor(id / BLOCK)
    for (const [lexeme, ids] of block) await postings.write({ lexeme, block: number, ids: packIds(ids) })
    block = new Map()
  }
  for (const one of generateCases(count, seed)) {
    if (id % BLOCK === BLOCK - 1) await endBlock()
    id += 1
    for (const lexeme of one.lexemes) {
      const ids = block.get(lexeme)
      if (ids === undefined) block.set(lexeme, [id % BLOCK])
      else ids.push(id % BLOCK)
    }
    for (const word of one.words) words.set(word, (words.get(word) ?? 0) + 1)
    await index.write(one.row)
    await documents.write({ ...one.document, id })
    for (const visit of one.visits) await visited.write(visit)
    await hand.write(handRow(id, one))
    if (id % wholeStep(count) === 0) whole.push(publishedRows(one))
    if (id % 100_000 === 0) say(`  ${id} of ${count} written`)
  }
  await endBlock()
  for (const one of [index, documents, visited, hand, postings]) await one.end()
  await copyWhole(
    url,
    whole.flatMap((one) => [...one]),
  )
  const spelled = await startCopy(url, 'SearchWord', ['word', 'documents'])
  for (const [word, holding] of words) await spelled.write({ word, documents: holding })
  await spelled.end()
}

/** One after another: each table points at the one before. */
async function copyWhole(
  url: string,
  rows: readonly { entry: object; revision: object; decision: object }[],
) {
  for (const [table, part] of [
    ['Entry', 'entry'],
    ['Revision', 'revision'],
    ['Decision', 'decision'],
  ] as const) {
    const copy = await startCopy(url, table, TABLE_COLUMNS[table].split(' '))
    for (const row of rows) await copy.write(row[part])
    await copy.end()
  }
}
