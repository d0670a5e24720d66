import { randomUUID } from 'node:crypto'
import { open, rm } from 'node:fs/promises'
import { join } from 'node:path'
import { prepareWaitingFolder } from './store.ts'

/** What came of one body: where it stands, how long it is, and whether it was cut or ran over. */
export interface Received {
  readonly path: string
  readonly bytes: number
  readonly end: 'whole' | 'cut' | 'too-long'
}

/**
 * Writes a body to a file as it arrives, never holding more of it than a chunk. A sender who goes away leaves
 * what came until then.
 *
 * @param max bytes after which it stops reading
 */
export async function receive(body: AsyncIterable<Uint8Array>, max: number): Promise<Received> {
  const path = join(await prepareWaitingFolder(), randomUUID())
  const file = await open(path, 'wx', 0o600)
  let bytes = 0
  let end: Received['end'] = 'whole'
  const chunks = body[Symbol.asyncIterator]()
  try {
    for (;;) {
      const next = await chunks.next().catch(() => undefined)
      if (next === undefined) end = 'cut'
      if (next === undefined || next.done) break
      if (bytes + next.value.byteLength > max) {
        end = 'too-long'
        await chunks.return?.()
        break
      }
      await file.write(next.value)
      bytes += next.value.byteLength
    }
    return { path, bytes, end }
  } catch (error) {
    await rm(path, { force: true })
    throw error
  } finally {
    await file.close()
  }
}
