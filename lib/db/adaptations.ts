import { db } from './client.ts'

/** A published recipe in a tree of adaptations. */
export interface Adaptation {
  readonly entryId: string
  readonly slug: string
  readonly title: string
  readonly invented: boolean
  /** The recipe it was adapted from, and in which version; null for the first of the tree. */
  readonly parentId: string | null
  readonly parentRevision: number | null
  /** 0 for the first of the tree. */
  readonly depth: number
}

/** Generations and recipes beyond which a tree is not followed. */
const DEEPEST = 20
const MOST = 300

/**
 * All published recipes that go back to the same one as this, the first of them first, each after the one it was
 * adapted from. A circle (two recipes that each name the other in a later version) is cut where it closes.
 */
export async function adaptationTree(entryId: string): Promise<Adaptation[]> {
  const rows = await db().$queryRaw<Adaptation[]>`
    WITH RECURSIVE up(id, depth, path) AS (
      SELECT ${entryId}::uuid, 0, ARRAY[${entryId}::uuid]
      UNION ALL
      SELECT c."recipeEntryId", up.depth + 1, up.path || c."recipeEntryId"
      FROM up JOIN "Citation" c ON c."entryId" = up.id AND c."recipeEntryId" IS NOT NULL
      JOIN "RecipeIndex" r ON r."entryId" = c."recipeEntryId"
      WHERE up.depth < ${DEEPEST} AND NOT c."recipeEntryId" = ANY(up.path)
    ), root AS (SELECT id FROM up ORDER BY depth DESC LIMIT 1),
    down(id, parent, revision, depth, path, line) AS (
      SELECT root.id, NULL::uuid, NULL::int, 0, ARRAY[root.id], ARRAY[r.slug]
      FROM root JOIN "RecipeIndex" r ON r."entryId" = root.id
      UNION ALL
      SELECT c."entryId", down.id, c."recipeRevision", down.depth + 1, down.path || c."entryId", down.line || r.slug
      FROM down JOIN "Citation" c ON c."recipeEntryId" = down.id
      JOIN "RecipeIndex" r ON r."entryId" = c."entryId"
      WHERE down.depth < ${DEEPEST} AND NOT c."entryId" = ANY(down.path)
    )
    SELECT d.id AS "entryId", r.slug, r.title, r.invented, d.parent AS "parentId", d.revision AS "parentRevision", d.depth
    FROM down d JOIN "RecipeIndex" r ON r."entryId" = d.id ORDER BY d.line LIMIT ${MOST}`
  return rows
}
