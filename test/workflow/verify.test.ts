import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeEach, describe, expect, it } from 'vitest'
import { db } from '#lib/db/client.ts'
import { decisionDigest, digestOf, revisionDigest } from '#lib/entry/digest.ts'
import { rebuild } from '#lib/workflow/rebuild.ts'
import { writeHeads } from '#lib/workflow/sign-heads.ts'
import { verify } from '#lib/workflow/verify.ts'
import { makeCase, makeRecipe, makeVisit, makeWork, publish } from '../support/make.ts'

const dataDir = mkdtempSync(join(tmpdir(), 'putlog-verify-'))
afterAll(() => rmSync(dataDir, { recursive: true, force: true }))

const TABLES = [
  'Entry',
  'Revision',
  'Decision',
  'RecipeIndex',
  'CaseIndex',
  'WorkIndex',
  'VisitIndex',
  'Citation',
]

/** All that a fresh start empties: those, and what the tests below do not look into. */
const EMPTIED = [
  ...TABLES,
  'LibraryIndex',
  'OutcomeIndex',
  'SearchDocument',
  'SearchPosting',
  'SearchWord',
  'SearchChange',
]

/** What somebody who owns the tables can do: switch the triggers off, write, and switch them on again. */
async function tamper(...statements: string[]): Promise<void> {
  const tables = ['Entry', 'Revision', 'Decision']
  for (const table of tables) await db().$executeRawUnsafe(`ALTER TABLE "${table}" DISABLE TRIGGER USER`)
  for (const statement of statements) await db().$executeRawUnsafe(statement)
  for (const table of tables) await db().$executeRawUnsafe(`ALTER TABLE "${table}" ENABLE TRIGGER USER`)
}

/** An entry with two revisions, its case and a visit, freshly made; heads signed if asked. */
beforeEach(async () => {
  rmSync(join(dataDir, 'heads'), { recursive: true, force: true })
  await tamper(`TRUNCATE ${EMPTIED.map((table) => `"${table}"`).join(', ')}`)
  await publish('recipe', 'kept', makeRecipe({ title: 'One' }))
  await publish('recipe', 'kept', makeRecipe({ title: 'Two' }), 1)
  await publish('case', 'barn-wall', makeCase({ works: [makeWork({ recipe: 'kept@2' })] }))
  await publish('visit', 'barn-wall-2012', makeVisit({ on: '2012-06-01' }))
})

const found = async () => (await verify(dataDir)).findings.map(({ what, where }) => `${what}: ${where}`)

describe('verify(dataDir)', () => {
  it('finds nothing wrong in an honest record, before heads are signed and after', async () => {
    expect(await verify(dataDir)).toEqual({
      entries: 3,
      revisions: 4,
      decisions: 4,
      heads: 0,
      erased: [],
      findings: [],
    })
    await writeHeads(dataDir)
    expect(await verify(dataDir)).toEqual({
      entries: 3,
      revisions: 4,
      decisions: 4,
      heads: 1,
      erased: [],
      findings: [],
    })
  })

  it('finds a body that was altered with the triggers off', async () => {
    await tamper(`UPDATE "Revision" SET body = jsonb_set(body, '{title}', '"Forged"') WHERE number = 1
      AND "entryId" = (SELECT id FROM "Entry" WHERE slug = 'kept')`)
    expect(await found()).toEqual(['altered-body: kept revision 1'])
  })

  it.each([
    ['note', `'forged'`, 'broken-chain: kept revision 2'],
    ['"authorKey"', `'somebody-else'`, 'broken-chain: kept revision 2'],
    ['"createdAt"', `"createdAt" - interval '1 year'`, 'broken-chain: kept revision 2'],
    ['state', `'returned'`, 'wrong-state: kept revision 2'],
  ])('finds a forged %s', async (column, value, finding) => {
    await tamper(`UPDATE "Revision" SET ${column} = ${value} WHERE number = 2`)
    expect(await found()).toEqual([finding])
  })

  it('finds a forged decision', async () => {
    await tamper(`UPDATE "Decision" SET words = 'Never looked at.' WHERE "entryId" =
      (SELECT id FROM "Entry" WHERE slug = 'barn-wall')`)
    expect(await found()).toEqual(['broken-chain: barn-wall decision 1'])
  })

  it('finds a published pointer and a withdrawal that no decision made', async () => {
    await tamper(`UPDATE "Entry" SET "publishedRevisionId" = NULL, "withdrawnAt" = now() WHERE slug = 'kept'`)
    expect(await found()).toEqual(['wrong-state: kept'])
  })

  it('finds a revision and a decision missing from the middle', async () => {
    await tamper(
      `DELETE FROM "Decision" WHERE number = 1 AND "entryId" = (SELECT id FROM "Entry" WHERE slug = 'kept')`,
      `DELETE FROM "Revision" WHERE number = 1 AND "entryId" = (SELECT id FROM "Entry" WHERE slug = 'kept')`,
    )
    expect(await found()).toEqual(['missing-revision: kept', 'missing-decision: kept'])
  })

  it('finds by the signed heads a history that was written anew with every digest right', async () => {
    await rewriteHistory('kept', 'As it never was.')
    expect(await found()).toEqual([])
    // The same deed after heads were signed.
    await writeHeads(dataDir)
    await rewriteHistory('kept', 'As it never was either.')
    expect(await found()).toEqual(['rewritten: kept revision 2', 'rewritten: kept decision 2'])
  })

  it('finds by the signed heads what was cut off the end, and an entry that is gone', async () => {
    await writeHeads(dataDir)
    await tamper(
      `UPDATE "Entry" SET "publishedRevisionId" = NULL`,
      `DELETE FROM "Decision" WHERE number = 2`,
      `DELETE FROM "Revision" WHERE number = 2`,
      `DELETE FROM "Decision" WHERE "entryId" = (SELECT id FROM "Entry" WHERE slug = 'barn-wall-2012')`,
      `DELETE FROM "Revision" WHERE "entryId" = (SELECT id FROM "Entry" WHERE slug = 'barn-wall-2012')`,
      `DELETE FROM "Entry" WHERE slug = 'barn-wall-2012'`,
    )
    expect(await found()).toEqual(
      expect.arrayContaining([
        'missing-revision: kept revision 2',
        'missing-decision: kept decision 2',
        'missing-entry: barn-wall-2012',
      ]),
    )
  })

  it('finds by the signed heads an address that was changed', async () => {
    await writeHeads(dataDir)
    await tamper(`UPDATE "Entry" SET slug = 'kept-otherwise' WHERE slug = 'kept'`)
    expect(await found()).toEqual(['rewritten: kept-otherwise'])
  })

  it.each([
    [`UPDATE "RecipeIndex" SET title = 'Forged'`, 'wrong-projection: RecipeIndex kept'],
    [`UPDATE "RecipeIndex" SET cases = 40`, 'wrong-projection: RecipeIndex kept'],
    [`UPDATE "VisitIndex" SET joint = 'lost'`, 'wrong-projection: VisitIndex barn-wall-2012'],
    [`DELETE FROM "WorkIndex"`, 'wrong-projection: WorkIndex barn-wall'],
    [`DELETE FROM "Citation" WHERE source IS NOT NULL`, 'wrong-projection: Citation kept'],
    [
      `UPDATE "CaseIndex" SET "entryId" = '01890000-0000-7000-8000-000000000009'`,
      'wrong-projection: CaseIndex barn-wall',
    ],
  ])('finds a projection that disagrees after %s, and rebuild mends it', async (statement, finding) => {
    await tamper(statement)
    expect(await found()).toContain(finding)
    await rebuild()
    expect(await found()).toEqual([])
  })
})

describe('rebuild()', () => {
  it('makes the same rows as publishing did', async () => {
    const tables = TABLES.slice(3)
    const rows = () =>
      Promise.all(tables.map((table) => db().$queryRawUnsafe(`SELECT * FROM "${table}" t ORDER BY t::text`)))
    const before = await rows()
    expect(before.map((list) => (list as unknown[]).length)).toEqual([1, 1, 1, 1, 3])
    await rebuild()
    expect(await rows()).toEqual(before)
  })
})

describe('writeHeads(dataDir)', () => {
  const files = () => readdirSync(join(dataDir, 'heads'))

  it('signs what is new and nothing when nothing is', async () => {
    expect(await writeHeads(dataDir)).toEqual({ file: files()[0], entries: 3, contradicted: [] })
    expect(await writeHeads(dataDir)).toEqual({ file: null, entries: 3, contradicted: [] })
    await publish('recipe', 'new', makeRecipe())
    expect(await writeHeads(dataDir)).toMatchObject({ entries: 4 })
    expect(files()).toHaveLength(2)
    expect(await found()).toEqual([])
  })

  it('signs nothing that contradicts what it signed before', async () => {
    await writeHeads(dataDir)
    await rewriteHistory('kept', 'As it never was.')
    expect(await writeHeads(dataDir)).toEqual({ file: null, entries: 3, contradicted: ['kept'] })
    expect(files()).toHaveLength(1)
  })

  it('keeps its key from all but its owner', async () => {
    await writeHeads(dataDir)
    expect(statSync(join(dataDir, 'keys', 'heads.pem')).mode & 0o777).toBe(0o600)
    expect(statSync(join(dataDir, 'keys')).mode & 0o777).toBe(0o700)
  })

  it.each([
    ['altered', (text: string) => text.replace('"kept"', '"held"'), 'its signature does not fit'],
    ['cut off', (text: string) => text.slice(0, 100), 'it cannot be read'],
  ])('leaves heads that verify distrusts once they are %s', async (_how, change, detail) => {
    await writeHeads(dataDir)
    const file = files()[0] ?? ''
    const path = join(dataDir, 'heads', file)
    writeFileSync(path, change(readFileSync(path, 'utf8')))
    expect((await verify(dataDir)).findings).toEqual([{ what: 'untrusted-heads', where: file, detail }])
  })

  it('leaves heads that verify distrusts once another key signed them', async () => {
    await writeHeads(dataDir)
    rmSync(join(dataDir, 'keys'), { recursive: true })
    await publish('recipe', 'new', makeRecipe())
    await writeHeads(dataDir)
    expect((await verify(dataDir)).findings).toEqual([
      { what: 'untrusted-heads', where: files()[0], detail: 'another key signed it' },
    ])
  })
})

/** A forger with the program's own digests: the last body changed and every digest and decision made to fit. */
async function rewriteHistory(slug: string, summary: string): Promise<void> {
  const entry = await db().entry.findUniqueOrThrow({
    where: { slug },
    include: { revisions: { orderBy: { number: 'asc' } }, decisions: { orderBy: { number: 'asc' } } },
  })
  const statements: string[] = []
  const digests = new Map<string, string>()
  let parentDigest: string | null = null
  for (const revision of entry.revisions) {
    const body = { ...(revision.body as object), summary }
    const bodyDigest = digestOf(body)
    const digest: string = revisionDigest({ ...revision, bodyDigest, parentDigest })
    statements.push(`UPDATE "Revision" SET body = '${JSON.stringify(body)}', "bodyDigest" = '${bodyDigest}',
      digest = '${digest}' WHERE id = '${revision.id}'`)
    digests.set(revision.id, digest)
    parentDigest = digest
  }
  parentDigest = null
  for (const decision of entry.decisions) {
    const digest: string = decisionDigest({
      ...decision,
      revisionDigest: digests.get(decision.revisionId) ?? '',
      parentDigest,
    })
    statements.push(`UPDATE "Decision" SET digest = '${digest}' WHERE id = '${decision.id}'`)
    parentDigest = digest
  }
  await tamper(...statements)
  await rebuild()
}
