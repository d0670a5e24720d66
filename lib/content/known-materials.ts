import { knownMaterial } from '#lib/entry/known-materials.ts'
import { materialOf } from './added.ts'
import { content } from './index.ts'
import type { Material } from './types.ts'

/** A material by its id: of content, or else an entry that was read, in content's own shape. */
export function materialBy(id: string): Material | undefined {
  const own = content().materials.get(id)
  if (own) return own
  const body = knownMaterial(id)
  return body && materialOf(id, body)
}
