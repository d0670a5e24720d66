import { stringify } from 'yaml'
import type { MaterialBody } from '#lib/entry/material.ts'
import type { SourceBody } from '#lib/entry/source.ts'
import { materialOf, sourceOf } from './added.ts'

/** A file of content, to be reviewed as text like every other. */
export interface WrittenFile {
  /** Within the content folder. */
  readonly path: string
  readonly text: string
}

/** A source entry as a file of content/sources. */
export const sourceFile = (slug: string, body: SourceBody): WrittenFile => ({
  path: `sources/${slug}.json`,
  text: `${JSON.stringify(sourceOf(slug, body), null, 2)}\n`,
})

/**
 * A material entry as a file of content/materials. Its sieve, laboratory results and interests stay with the entry,
 * whose versions remain at their addresses.
 */
export function materialFile(slug: string, body: MaterialBody): WrittenFile {
  const { id: _, ...material } = materialOf(slug, body)
  return { path: `materials/${slug}.yaml`, text: stringify(material, { lineWidth: 0 }) }
}
