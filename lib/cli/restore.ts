import { migrate } from '#lib/db/migrate/apply.ts'
import { Halt } from '#lib/errors.ts'
import { restoreBackup } from '#lib/workflow/restore-backup.ts'
import { withDatabase } from './database.ts'
import { say } from './say.ts'

const USAGE = 'Say from where: npm run restore -- putlog-2026-11-25.jsonl.gz [--key=fingerprint]'

/** `npm run restore -- file.jsonl.gz [--key=fingerprint]`: a backup into an empty database, then verified. */
export function run(args: readonly string[]): Promise<number> {
  const key = args.find((arg) => arg.startsWith('--key='))?.slice('--key='.length)
  const [path, ...more] = args.filter((arg) => !arg.startsWith('--key='))
  if (path === undefined || more.length > 0) throw new Halt(USAGE)
  return withDatabase(async (url, dataDir) => {
    await migrate(url, { say })
    const { entries, revisions, decisions, lost } = await restoreBackup(dataDir, path, key)
    say(`Restored and verified: entries ${entries}, revisions ${revisions}, decisions ${decisions}.`)
    if (lost.length > 0) say(`Written after this backup and not in it: something of ${lost.join(', ')}.`)
    return 0
  })
}
