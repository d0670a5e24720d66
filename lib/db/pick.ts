import { db } from './client.ts'

/** A recipe that a form offers to choose. */
export interface RecipeChoice {
  readonly slug: string
  readonly revision: number
  readonly title: string
}

/** Most that a form offers of what people wrote; others are named by their address. */
const MOST_OFFERED = 400

/** Published recipes by title. */
export const recipesToChoose = (): Promise<RecipeChoice[]> => db().$queryRaw`
  SELECT i.slug, i.revision, i.title FROM "RecipeIndex" i ORDER BY i."sortTitle", i.slug LIMIT ${MOST_OFFERED}`

/** Published materials or sources that people added, by title. */
export const addedToChoose = (kind: 'material' | 'source'): Promise<{ slug: string; title: string }[]> =>
  db().$queryRaw`
    SELECT i.slug, i.title FROM "LibraryIndex" i WHERE i.kind = ${kind}::"Kind"
    ORDER BY i."sortTitle", i.slug LIMIT ${MOST_OFFERED}`
