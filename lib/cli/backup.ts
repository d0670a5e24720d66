import { existsSync } from 'node:fs'
import { Halt } from '#lib/errors.ts'
import { photosAt } from '#lib/photos/store.ts'
import { backup } from '#lib/workflow/backup.ts'
import { withDatabase } from './database.ts'
import { say } from './say.ts'

/** `npm run backup -- file.jsonl.gz`: the whole record in one file, while the site runs. */
export function run([path]: readonly string[]): Promise<number> {
  if (path === undefined) throw new Halt('Say where to: npm run backup -- putlog-2026-11-25.jsonl.gz')
  if (existsSync(path)) throw new Halt(`There is a file ${path} already; a backup never replaces another.`)
  return withDatabase(async (_url, dataDir) => {
    const { entries, revisions, decisions, rows, fingerprint } = await backup(dataDir, path)
    say(
      `Wrote to ${path}: entries ${entries}, revisions ${revisions}, decisions ${decisions}, further rows ${rows}.`,
    )
    say(`Photos are files, and not in it: back up ${photosAt()} beside it. Files there never change.`)
    say(`Signed by the key ${fingerprint}: write it down, a restore on another machine asks for it.`)
    return 0
  })
}
