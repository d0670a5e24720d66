import { createHash, randomUUID } from 'node:crypto'
import { existsSync, mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { gunzipSync, gzipSync } from 'node:zlib'
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { closeDb, db } from '#lib/db/client.ts'
import { digestOf, revisionDigest } from '#lib/entry/digest.ts'
import { backup } from '#lib/workflow/backup.ts'
import { addReminder, makeCalendar } from '#lib/workflow/remind.ts'
import { restoreBackup } from '#lib/workflow/restore-backup.ts'
import { writeHeads } from '#lib/workflow/sign-heads.ts'
import { verify } from '#lib/workflow/verify.ts'
import { withdraw } from '#lib/workflow/withdraw.ts'
import { copyTemplate } from '../support/database.ts'
import { makeCase, makeRecipe, makeVisit, makeWork, publish, STEWARD } from '../support/make.ts'
import { makePerson } from '../support/people.ts'

const folder = mkdtempSync(join(tmpdir(), 'putlog-backup-'))
const dataDir = join(folder, 'data')
const path = join(folder, 'a.jsonl.gz')
const TABLES = [
  'Entry',
  'Revision',
  'Decision',
  'RecipeIndex',
  'CaseIndex',
  'WorkIndex',
  'VisitIndex',
  'Citation',
  'Account',
  'RoleGrant',
  'Identity',
  'Audit',
  'Notice',
  'Reminder',
  'Calendar',
]
const rows = () =>
  Promise.all(TABLES.map((table) => db().$queryRawUnsafe(`SELECT * FROM "${table}" t ORDER BY t::text`)))
/** An account, its two roles and its identity elsewhere, a reminder and a calendar; what was done and told so far. */
const sideRows = async () => 6 + (await db().audit.count()) + (await db().notice.count())

let original: unknown[]
let fingerprint: string

beforeAll(async () => {
  await publish('recipe', 'kept', makeRecipe({ title: 'One' }))
  await publish('recipe', 'kept', makeRecipe({ title: 'Two' }), 1)
  await publish('recipe', 'gone', makeRecipe({ title: 'Kalk – õ 石灰' }))
  await withdraw(STEWARD, { key: randomUUID(), slug: 'gone', words: 'The author asked.' })
  await publish('case', 'barn-wall', makeCase({ works: [makeWork({ recipe: 'kept@2' })] }))
  await publish('visit', 'barn-wall-2012', makeVisit({ on: '2012-06-01' }))
  const { id: accountId, member } = await makePerson({
    roles: ['contributor', 'steward'],
    password: 'lime and sand',
  })
  await addReminder(member, { caseSlug: 'barn-wall', work: 'repointing', when: 'date', on: '2099-05-01' })
  await makeCalendar(member)
  await db().identity.create({
    data: { issuer: 'https://id.example', subject: 's', accountId, at: new Date() },
  })
  original = await rows()
  fingerprint = (await backup(dataDir, path)).fingerprint
})
afterAll(() => rmSync(folder, { recursive: true, force: true }))

/** Points `db()` at a database that is empty but for its tables. */
async function moveToEmptyDatabase(): Promise<void> {
  await closeDb()
  process.env.DATABASE_URL = await copyTemplate(`t_${randomUUID().replaceAll('-', '')}`)
}

/** The backup with its lines changed, packed again under another name. */
function changed(change: (lines: string[]) => string[]): string {
  const lines = gunzipSync(readFileSync(path)).toString('utf8').trimEnd().split('\n')
  const to = join(folder, `${randomUUID()}.jsonl.gz`)
  writeFileSync(to, gzipSync(`${change(lines).join('\n')}\n`))
  return to
}

/** The same with the file's own SHA-256 made to fit: what a forger would do. */
const forged = (change: (lines: string[]) => string[]) =>
  changed((lines) => {
    const all = change(lines.slice(0, -1))
    const sha256 = digestOfText(`${all.join('\n')}\n`)
    return [...all, JSON.stringify({ line: 'end', sha256 })]
  })

describe('backup(dataDir, path)', () => {
  it('writes one file for its owner alone, with counts, signed heads and its own SHA-256', async () => {
    expect(statSync(path).mode & 0o777).toBe(0o600)
    const lines = gunzipSync(readFileSync(path)).toString('utf8').trimEnd().split('\n')
    const [end, counts, heads] = lines.toReversed().map((line) => JSON.parse(line))
    expect(counts).toEqual({ line: 'counts', entries: 4, revisions: 5, decisions: 6, rows: await sideRows() })
    expect(heads.payload.heads).toHaveLength(4)
    expect(end).toEqual({ line: 'end', sha256: digestOfText(`${lines.slice(0, -1).join('\n')}\n`) })
  })

  it('leaves nothing behind when it cannot write', async () => {
    const nowhere = join(folder, 'no-such-folder', 'a.gz')
    await expect(backup(dataDir, nowhere)).rejects.toThrow('ENOENT')
    expect(existsSync(`${nowhere}.half`)).toBe(false)
  })
})

describe('restoreBackup(dataDir, path, trusted)', () => {
  beforeEach(moveToEmptyDatabase)

  it('brings back every row of the record and of the projections', async () => {
    expect(await restoreBackup(dataDir, path)).toMatchObject({
      entries: 4,
      revisions: 5,
      decisions: 6,
      findings: [],
    })
    expect(await rows()).toEqual(original)
    expect((await verify(dataDir)).findings).toEqual([])
  })

  it('says what was written after the backup, and starts anew from its own heads', async () => {
    await restoreBackup(dataDir, path)
    await publish('recipe', 'kept', makeRecipe({ title: 'Three' }), 2)
    await publish('recipe', 'newer', makeRecipe())
    await writeHeads(dataDir)
    await moveToEmptyDatabase()
    expect((await restoreBackup(dataDir, path)).lost).toEqual(['kept', 'newer'])
    expect(await verify(dataDir)).toMatchObject({ heads: 1, findings: [] })
    expect(await writeHeads(dataDir)).toMatchObject({ file: null, contradicted: [] })
  })

  it('fills a column that is newer than the backup’s rows as the database fills it', async () => {
    const newer = ['language', 'tries']
    let left = 0
    const without = (keep: (nth: number) => boolean) =>
      forged((lines) =>
        lines.map((text, nth) => {
          const line = JSON.parse(text)
          if (line.line !== 'row' || keep(nth) || newer.every((key) => !(key in line.row))) return text
          left += 1
          const row = Object.entries(line.row).filter(([key]) => !newer.includes(key))
          return JSON.stringify({ ...line, row: { ...Object.fromEntries(row), unheard: 'of' } })
        }),
      )
    // All of an earlier time, and rows of two times side by side.
    await restoreBackup(
      dataDir,
      without(() => false),
    )
    expect(await rows()).toEqual(original)
    expect(left).toBeGreaterThan(3)
    await moveToEmptyDatabase()
    await restoreBackup(
      dataDir,
      without((nth) => nth % 2 === 0),
    )
    expect(await rows()).toEqual(original)
  })

  it('goes only into an empty database', async () => {
    await restoreBackup(dataDir, path)
    await expect(restoreBackup(dataDir, path)).rejects.toThrow('only into an empty database')
    expect(await rows()).toEqual(original)
  })

  it('takes a file signed elsewhere only when its fingerprint is given', async () => {
    const elsewhere = join(folder, 'elsewhere')
    await expect(restoreBackup(elsewhere, path)).rejects.toThrow(`--key=${fingerprint}`)
    await expect(restoreBackup(elsewhere, path, '0'.repeat(32))).rejects.toThrow(
      'the key trusted here is 0000',
    )
    expect(await restoreBackup(elsewhere, path, fingerprint)).toMatchObject({ entries: 4 })
  })

  const swap = (from: string, to: string) => (lines: string[]) => lines.map((line) => line.replace(from, to))

  it.each([
    ['a changed word', () => changed(swap('"One"', '"Own"')), 'its SHA-256 does not fit'],
    ['a cut end', () => changed((lines) => lines.slice(0, -1)), 'its last line is missing'],
    ['more after the end', () => changed((lines) => [...lines, lines[1] ?? '']), 'goes on after its end'],
    ['another kind of file', () => changed((lines) => lines.slice(1)), 'not a backup'],
    [
      'a line of unknown form',
      () => changed(swap('"kind":"case"', '"kind":"wall"')),
      'is not one that this program writes',
    ],
    ['a newer format', () => changed(swap('"format":1', '"format":2')), 'Line 1'],
    ['a forged body', () => forged(swap('"One"', '"Own"')), 'kept revision 1: the body is not the one'],
    ['a forged reviewer', () => forged(swap('"reviewer-1"', '"reviewer-2"')), 'its digest does not fit'],
    [
      'a forged address',
      () => forged(swap('"slug":"gone","published', '"slug":"here","published')),
      'the recipe gone',
    ],
    [
      'a forged state',
      () => forged(swap('"state":"withdrawn"', '"state":"declined"')),
      'gone revision 1: it is declined',
    ],
    [
      'a lost entry',
      () =>
        forged((lines) =>
          lines.filter((line) => !line.includes('barn-wall-2012') || line.includes('"heads"')),
        ),
      /Nothing was restored|violates|constraint/,
    ],
    [
      'forged heads',
      () => forged(swap('"heads":[{', '"heads":[{"forged":1,')),
      'is not one that this program writes',
    ],
    [
      'heads without a head',
      () => forged((lines) => lines.map(dropHead)),
      'signature of the backup does not fit',
    ],
    ['forged counts', () => forged(swap('"entries":4', '"entries":3')), 'does not hold what it counts'],
  ])('refuses %s and restores nothing', async (_what, make, message) => {
    await expect(restoreBackup(dataDir, make())).rejects.toThrow(message)
    expect((await rows()).flat()).toEqual([])
  })

  it('refuses a history written anew with every digest right', async () => {
    const file = forged((lines) => {
      return lines.map((text) => {
        const line = JSON.parse(text)
        if (line.line !== 'revision' || line.body.title !== 'Two') return text
        const body = { ...line.body, title: 'Too' }
        const parent = lines.map((other) => JSON.parse(other)).find((other) => other.body?.title === 'One')
        const told = { ...line, body, bodyDigest: digestOf(body), createdAt: new Date(line.createdAt) }
        const digest = revisionDigest({ ...told, parentDigest: parent.digest })
        return JSON.stringify({ ...told, createdAt: line.createdAt, digest })
      })
    })
    await expect(restoreBackup(dataDir, file)).rejects.toThrow('Nothing was restored')
    expect((await rows()).flat()).toEqual([])
  })
})

function dropHead(text: string): string {
  const line = JSON.parse(text)
  if (line.line !== 'heads') return text
  return JSON.stringify({ ...line, payload: { ...line.payload, heads: line.payload.heads.slice(1) } })
}

function digestOfText(text: string): string {
  return createHash('sha256').update(text).digest('hex')
}
