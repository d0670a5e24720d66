import { db } from '#lib/db/client.ts'
import { contradicted, readHeads } from '#lib/db/heads.ts'
import { readLastHeads, writeHeadsFile } from './record/heads-file.ts'

export interface SignedHeads {
  /** Name of the file in the data folder's `heads`; null when nothing was signed. */
  readonly file: string | null
  readonly entries: number
  /** Addresses whose history does not lead on from the heads signed before: then nothing is signed. */
  readonly contradicted: readonly string[]
}

/**
 * Signs where every chain ends now, into the data folder. `serve` does so when it starts and before it stops, so
 * that a history written anew in between can be told from the true one. It signs nothing when nothing changed, and
 * nothing that contradicts what it signed before.
 */
export async function writeHeads(dataDir: string): Promise<SignedHeads> {
  const last = readLastHeads(dataDir)?.heads ?? null
  return db().$transaction(
    async (tx) => {
      const heads = await readHeads(tx)
      const entries = heads.length
      const wrong = last === null ? [] : await contradicted(tx, last.heads)
      if (wrong.length > 0) return { file: null, entries, contradicted: wrong }
      if (last !== null && JSON.stringify(last.heads) === JSON.stringify(heads))
        return { file: null, entries, contradicted: [] }
      const file = writeHeadsFile(dataDir, { at: new Date().toISOString(), heads })
      return { file, entries, contradicted: [] }
    },
    { isolationLevel: 'RepeatableRead', timeout: 60_000 },
  )
}
