import { randomUUID } from 'node:crypto'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest'
import { run as backup } from '#lib/cli/backup.ts'
import { run as demo } from '#lib/cli/demo.ts'
import { run as rebuild } from '#lib/cli/rebuild.ts'
import { run as restore } from '#lib/cli/restore.ts'
import { run as verify } from '#lib/cli/verify.ts'
import { closeDb, db } from '#lib/db/client.ts'
import { Halt } from '#lib/errors.ts'
import { writeHeads } from '#lib/workflow/sign-heads.ts'
import { createEmpty } from '../support/database.ts'
import { makeRecipe, publish } from '../support/make.ts'

const folder = mkdtempSync(join(tmpdir(), 'putlog-commands-'))
const file = join(folder, 'backup.jsonl.gz')

/** A command's exit code and what it said. */
async function hear(command: () => Promise<number>): Promise<{ code: number; said: string }> {
  const log = vi.spyOn(console, 'log').mockImplementation(() => {})
  const code = await command()
  const said = log.mock.calls.flat().join('\n')
  log.mockRestore()
  return { code, said }
}

beforeAll(async () => {
  process.env.DATA_DIR = join(folder, 'data')
  await publish('recipe', 'kept', makeRecipe({ title: 'One', invented: false }))
  await publish('recipe', 'kept', makeRecipe({ title: 'Two', invented: false }), 1)
  await writeHeads(process.env.DATA_DIR)
})
afterAll(() => rmSync(folder, { recursive: true, force: true }))

describe('the commands that keep the record', () => {
  it('verify says that the record is whole, with code 0', async () => {
    expect(await hear(verify)).toEqual({
      code: 0,
      said: 'Checked: entries 1, revisions 2, decisions 2, files of signed heads 1.\nThe record is whole.',
    })
  })

  it('backup writes a file once and never over another', async () => {
    expect(() => backup([])).toThrow(Halt)
    const { code, said } = await hear(() => backup([file]))
    expect(code).toBe(0)
    expect(said).toMatch(
      /^Wrote to .*: entries 1, revisions 2, decisions 2, further rows \d+\.\nPhotos are files.*\nSigned by the key [0-9a-f]{32}:/,
    )
    expect(() => backup([file])).toThrow('never replaces another')
  })

  it('rebuild says what it made', async () => {
    expect(await hear(rebuild)).toEqual({ code: 0, said: 'Rebuilt: recipes 1, cases 0, visits 0.' })
  })

  it('demo takes nothing out that is not invented, and wants to be told which way', async () => {
    expect(await hear(() => demo(['remove']))).toMatchObject({
      code: 0,
      said: expect.stringMatching(/withdrawn: 0\./),
    })
    for (const args of [[], ['off']]) expect(() => demo(args)).toThrow(Halt)
  })

  it('verify says what was altered and where, with code 1', async () => {
    await db().$executeRawUnsafe('ALTER TABLE "Revision" DISABLE TRIGGER USER')
    await db().$executeRawUnsafe(
      `UPDATE "Revision" SET body = jsonb_set(body, '{title}', '"Own"') WHERE number = 1`,
    )
    await db().$executeRawUnsafe('ALTER TABLE "Revision" ENABLE TRIGGER USER')
    const { code, said } = await hear(verify)
    expect(code).toBe(1)
    expect(said).toContain('altered-body: kept revision 1: the body is not the one that was submitted')
    expect(said).toContain('The record is not whole. Findings: 1.')
  })

  it('restore brings an empty database without tables to the record of the backup', async () => {
    await closeDb()
    process.env.DATABASE_URL = await createEmpty(`t_${randomUUID().replaceAll('-', '')}`)
    const { code, said } = await hear(() => restore([file]))
    expect(code).toBe(0)
    expect(said).toContain('Restored and verified: entries 1, revisions 2, decisions 2.')
    expect((await hear(verify)).code).toBe(0)
    for (const args of [[], [file, 'more']]) expect(() => restore(args)).toThrow(Halt)
  })
})
