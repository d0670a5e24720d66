import { migrate } from '#lib/db/migrate/apply.ts'
import { withDatabase } from './database.ts'
import { say } from './say.ts'

/** `npm run migrate`: brings the site's database up to date without serving it. */
export async function run(): Promise<number> {
  const applied = await withDatabase((url) => migrate(url, { say }))
  say(applied.length === 0 ? 'The database is up to date' : `${applied.length} migrations applied`)
  return 0
}
