import { createHash } from 'node:crypto'
import { db } from '#lib/db/client.ts'
import { nameOf, photoStore } from '#lib/photos/store.ts'
import type { Finding } from './record/chains.ts'

const AT_ONCE = 500

/** Every stored picture that is not there or is not what its name says. Erased ones are not looked for. */
export async function checkPhotos(): Promise<Finding[]> {
  const findings: Finding[] = []
  let after = ''
  for (;;) {
    const piece = await db().photo.findMany({
      where: { sha256: { gt: after }, erasedAt: null },
      orderBy: { sha256: 'asc' },
      take: AT_ONCE,
      select: { sha256: true },
    })
    for (const { sha256 } of piece) findings.push(...(await checkPhoto(sha256)))
    const last = piece.at(-1)
    if (last === undefined) return findings
    after = last.sha256
  }
}

async function checkPhoto(sha256: string): Promise<Finding[]> {
  const where = nameOf.kept(sha256)
  const file = await photoStore().get(where)
  if (file === null) return [{ what: 'missing-photo', where, detail: 'the store has no such file' }]
  const hash = createHash('sha256')
  for await (const chunk of file.stream) hash.update(chunk)
  return hash.digest('hex') === sha256
    ? []
    : [{ what: 'altered-photo', where, detail: 'its SHA-256 is not its name' }]
}
