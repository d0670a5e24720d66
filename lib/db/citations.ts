import { db } from './client.ts'
import { MOST } from './page.ts'

/** A published entry that cites something, and where in it. */
export interface Citing {
  readonly kind: 'recipe' | 'case' | 'material' | 'row'
  readonly slug: string
  readonly title: string
  readonly locator: string | null
  readonly invented: boolean
}

/** The published entries that cite a source, or a row of content/tables; a hundred at most. */
export function citing(target: { source: string } | { row: string }): Promise<Citing[]> {
  const [source, row] = 'source' in target ? [target.source, null] : [null, target.row]
  return db().$queryRaw<Citing[]>`
    SELECT e.kind::text AS kind, e.slug, coalesce(r.title, c.title, l.title) AS title, x.locator,
      coalesce(r.invented, c.invented, l.invented) AS invented
    FROM "Citation" x
    JOIN "Entry" e ON e.id = x."entryId"
    LEFT JOIN "RecipeIndex" r ON r."entryId" = e.id
    LEFT JOIN "CaseIndex" c ON c."entryId" = e.id
    LEFT JOIN "LibraryIndex" l ON l."entryId" = e.id
    WHERE x.source = ${source} OR x.row = ${row}
    ORDER BY e.kind, e.slug, x.position LIMIT ${MOST}`
}
