import { readBody } from '#lib/entry/body.ts'
import type { LabResult } from '#lib/entry/laboratory.ts'
import { connections } from './client.ts'

/** What laboratories found of a published recipe or material that people wrote. */
export interface LabEntry {
  readonly kind: 'recipe' | 'material'
  readonly slug: string
  readonly revision: number
  readonly title: string
  readonly invented: boolean
  readonly results: readonly LabResult[]
}

const PUBLISHED = `SELECT e.kind::text AS kind, e.slug, r.number AS revision, r.body, r.shape
  FROM "Entry" e JOIN "Revision" r ON r.id = e."publishedRevisionId"
  WHERE e.slug = ANY($1::text[]) AND e.kind IN ('recipe', 'material') AND e."withdrawnAt" IS NULL
    AND jsonb_array_length(coalesce(r.body -> 'laboratory', '[]')) > 0
  ORDER BY array_position($1::text[], e.slug)`

/** Those of the recipes and materials at these addresses that carry laboratory results, in the order given. */
export async function laboratoryOf(slugs: readonly string[]): Promise<LabEntry[]> {
  if (slugs.length === 0) return []
  const { rows } = await connections().query<Row>(PUBLISHED, [[...slugs]])
  return rows.map(({ kind, slug, revision, body, shape }) => {
    const {
      title,
      invented,
      laboratory = [],
    } = kind === 'recipe' ? readBody('recipe', body, shape) : readBody('material', body, shape)
    return { kind, slug, revision, title, invented, results: laboratory }
  })
}

interface Row {
  kind: 'recipe' | 'material'
  slug: string
  revision: number
  body: unknown
  shape: number
}
