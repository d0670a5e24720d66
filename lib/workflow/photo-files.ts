import { createHash, randomUUID } from 'node:crypto'
import { open, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { type Encoded, photoFault, screensOf } from '#lib/photos/encode.ts'
import { nameOf, photoStore, prepareWaitingFolder } from '#lib/photos/store.ts'

/**
 * Joins the pieces of an upload into one file; resolves with its SHA-256.
 *
 * @throws Refusal `invalid` when a piece is not in the store
 */
export async function assemble(pieces: readonly string[], path: string): Promise<string> {
  const hash = createHash('sha256')
  const file = await open(path, 'wx', 0o600)
  try {
    for (const name of pieces) {
      const piece = await photoStore().get(name)
      if (piece === null) throw photoFault('photo-digest')
      for await (const chunk of piece.stream) {
        hash.update(chunk)
        await file.write(chunk)
      }
    }
    return hash.digest('hex')
  } finally {
    await file.close()
  }
}

/**
 * Puts all files of a picture into the store, the kept one last; once more puts the same under the same names.
 *
 * @param stepDone called after each file
 */
export async function storePicture(
  { sha256, kept, width }: Pick<Encoded, 'sha256' | 'kept' | 'width'>,
  stepDone: () => Promise<void> = async () => {},
): Promise<void> {
  const scratch = join(await prepareWaitingFolder(), randomUUID())
  const put = async (name: string, data: Buffer) => {
    await writeFile(scratch, data, { mode: 0o600 })
    await photoStore().put(name, scratch)
    await stepDone()
  }
  for await (const screen of screensOf(kept, width))
    await put(nameOf.screen(sha256, screen.width, screen.format), screen.data)
  await put(nameOf.kept(sha256), kept)
}

/** Whether a picture's files are in the store: the kept one is put last and removed with the others. */
export async function isStored(sha256: string): Promise<boolean> {
  const kept = await photoStore().get(nameOf.kept(sha256))
  kept?.stream.destroy()
  return kept !== null
}
