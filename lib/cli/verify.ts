import { verify } from '#lib/workflow/verify.ts'
import { withDatabase } from './database.ts'
import { say } from './say.ts'

/** `npm run verify`: checks the whole record. Code 1 when anything in it was altered, lost or written anew. */
export function run(): Promise<number> {
  return withDatabase(async (_url, dataDir) => {
    const { entries, revisions, decisions, heads, erased, findings } = await verify(dataDir)
    say(
      `Checked: entries ${entries}, revisions ${revisions}, decisions ${decisions}, files of signed heads ${heads}.`,
    )
    for (const where of erased) say(`erased, as a decision of its history says: ${where}`)
    for (const { what, where, detail } of findings) say(`${what}: ${where}: ${detail}`)
    say(
      findings.length === 0
        ? 'The record is whole.'
        : `The record is not whole. Findings: ${findings.length}.`,
    )
    return findings.length === 0 ? 0 : 1
  })
}
