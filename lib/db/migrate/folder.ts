import { createHash } from 'node:crypto'
import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { Halt } from '#lib/errors.ts'

/** Where this site's own migrations stand. */
export const migrationsFolder = fileURLToPath(new URL('../../../prisma/migrations', import.meta.url))

/** One migration as it stands on disk: a folder `<time>_<name>` with its SQL. */
export interface Migration {
  name: string
  sql: string
  /** False for SQL that PostgreSQL refuses inside a transaction; its first line then is `-- outside a transaction`. */
  inTransaction: boolean
}

/**
 * The migrations of a folder in the order they apply.
 *
 * @throws Halt for a migration without its SQL file
 */
export function readMigrations(folder = migrationsFolder): Migration[] {
  if (!existsSync(folder)) return []
  return readdirSync(folder, { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map(({ name }) => name)
    .sort()
    .map((name) => {
      const file = join(folder, name, 'migration.sql')
      if (!existsSync(file)) throw new Halt(`The migration ${name} has no migration.sql.`)
      const sql = readFileSync(file, 'utf8')
      return { name, sql, inTransaction: !/^-- outside a transaction\s*$/m.test(sql.split('\n')[0] ?? '') }
    })
}

/** SHA-256 of a migration's text, as Prisma records it. */
export const checksumOf = (sql: string): string => createHash('sha256').update(sql).digest('hex')

/** Whether a recorded checksum is that of the text, be its lines ended the Unix or the Windows way. */
export function matchesChecksum(sql: string, recorded: string): boolean {
  const unix = sql.replaceAll('\r\n', '\n')
  return [sql, unix, unix.replaceAll('\n', '\r\n')].some((text) => checksumOf(text) === recorded)
}
