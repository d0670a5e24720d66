import { createHash } from 'node:crypto'
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { db } from '#lib/db/client.ts'
import type { VisitBody } from '#lib/entry/visit.ts'
import { sizeUp } from '#lib/photos/encode.ts'
import { nameOf, photoStore } from '#lib/photos/store.ts'
import type { DemoEntry } from './demo-files.ts'
import { storePicture } from './photo-files.ts'
import { addPhoto } from './photo-rows.ts'

/** The drawings of content/demo/photos by the SHA-256 that the invented visits name them by. */
export function readDemoPhotos(dir: string = join(process.cwd(), 'content')): ReadonlyMap<string, Buffer> {
  const folder = join(dir, 'demo', 'photos')
  const files = readdirSync(folder).filter((name) => name.endsWith('.jpg'))
  return new Map(
    files.map((name) => {
      const data = readFileSync(join(folder, name))
      return [createHash('sha256').update(data).digest('hex'), data]
    }),
  )
}

/**
 * Puts the drawings that the invented visits show into the store, as uploaded by the author of the visit. They are
 * stored as they stand, so that they have one name on every machine; what is there already is left alone.
 *
 * @returns how many were added
 */
export async function loadDemoPhotos(
  entries: readonly DemoEntry[],
  drawings: () => ReadonlyMap<string, Buffer> = readDemoPhotos,
): Promise<number> {
  const shown = new Map(entries.flatMap(shownBy))
  if (shown.size === 0) return 0
  const known = await db().photo.findMany({
    where: { sha256: { in: [...shown.keys()] } },
    select: { sha256: true, erasedAt: true },
  })
  const erased = new Set(known.filter(({ erasedAt }) => erasedAt !== null).map(({ sha256 }) => sha256))
  const stored = new Set(known.map(({ sha256 }) => sha256))
  let added = 0
  const read = drawings()
  for (const [sha256, author] of shown) {
    const data = read.get(sha256)
    // A digest without a drawing is found when the visit that shows it is submitted, with its place in the file.
    if (data === undefined || erased.has(sha256)) continue
    const there = await photoStore().get(nameOf.kept(sha256))
    there?.stream.destroy()
    if (stored.has(sha256) && there !== null) continue
    await add(sha256, data, author)
    added += 1
  }
  return added
}

const shownBy = ({ revisions }: DemoEntry): [sha256: string, author: string][] =>
  revisions.flatMap(({ author, body }) =>
    ((body as VisitBody).photos ?? []).map(({ sha256 }): [string, string] => [
      sha256,
      `demo-contributor-${author}`,
    ]),
  )

async function add(sha256: string, kept: Buffer, author: string): Promise<void> {
  const picture = { sha256, kept, takenOn: null, ...(await sizeUp(kept)) }
  await storePicture(picture)
  await db().$transaction((tx) => addPhoto(tx, picture, { keepDate: false, uploaderKey: author }, sha256))
}
