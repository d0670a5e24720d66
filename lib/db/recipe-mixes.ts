import { readBody } from '#lib/entry/body.ts'
import type { RecipeBody } from '#lib/entry/recipe.ts'
import { Prisma } from '../../prisma/generated/client.ts'
import { db } from './client.ts'
import { MOST } from './page.ts'

/** What a published recipe is mixed of. */
export interface RecipeMix {
  readonly slug: string
  readonly title: string
  readonly invented: boolean
  readonly ingredients: RecipeBody['ingredients']
}

/** Published recipes with lime in them, those with most cases first; a hundred at most. */
export async function recipeMixes(): Promise<RecipeMix[]> {
  const lime = JSON.stringify({ ingredients: [{ role: 'lime' }] })
  const rows = await db().$queryRaw<
    { slug: string; title: string; invented: boolean; body: unknown; shape: number }[]
  >(Prisma.sql`
    SELECT i.slug, i.title, i.invented, r.body, r.shape FROM "RecipeIndex" i
    JOIN "Entry" e ON e.id = i."entryId"
    JOIN "Revision" r ON r.id = e."publishedRevisionId"
    WHERE r.body @> ${lime}::jsonb
    ORDER BY i.cases DESC, i."sortTitle", i.slug LIMIT ${MOST}`)
  return rows.map(({ slug, title, invented, body, shape }) => ({
    slug,
    title,
    invented,
    ingredients: readBody('recipe', body, shape).ingredients,
  }))
}
