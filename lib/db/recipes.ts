import type { RecipeBody } from '#lib/entry/recipe.ts'
import type { Family, Standing, Use } from '#lib/entry/terms.ts'
import { Prisma } from '../../prisma/generated/client.ts'
import { db } from './client.ts'
import {
  type Broader,
  type Count,
  countArray,
  countColumn,
  countUnits,
  every,
  groupFacets,
  oneOrMore,
} from './facet.ts'
import { type Published, publishedBySlug } from './published.ts'

export interface RecipeSummary {
  readonly slug: string
  readonly revision: number
  readonly title: string
  readonly summary: string
  readonly family: Family
  readonly uses: Use[]
  readonly standing: Standing
  /** Units that the recipe names, and units of the cases that used it. */
  readonly units: string[]
  readonly cases: number
  readonly longestYears: number | null
  readonly invented: boolean
}

export interface RecipeFilter {
  /** One unit, or a unit with all that it covers: any of them will do. */
  readonly unit?: string | readonly string[] | undefined
  readonly use?: Use | undefined
  readonly family?: Family | undefined
}

const TABLE = Prisma.sql`"RecipeIndex" i`

/** Published recipes by title. */
export function listRecipes(filter: RecipeFilter = {}): Promise<RecipeSummary[]> {
  return db().$queryRaw<RecipeSummary[]>`
    SELECT slug, revision, title, summary, family, uses, standing, units, cases, "longestYears", invented
    FROM ${TABLE} WHERE ${where(filter)} ORDER BY "sortTitle", slug`
}

/** What each further choice would leave, each facet counted under the other filters. */
export async function recipeFacets(
  filter: RecipeFilter = {},
  broader: Broader = [],
): Promise<Record<'unit' | 'use' | 'family', Count[]>> {
  const query = { table: TABLE, where: (except: string) => where({ ...filter, [except]: undefined }) }
  const rows = await db().$queryRaw<{ facet: string; id: string; count: number }[]>`
    ${countUnits(query, broader)} UNION ALL
    ${countArray(query, 'use', Prisma.sql`i.uses`)} UNION ALL
    ${countColumn(query, 'family', Prisma.sql`i.family`)}`
  return groupFacets(['unit', 'use', 'family'], rows)
}

/** Published recipes that name a material, by title. */
export const recipesWith = (material: string): Promise<{ slug: string; title: string }[]> =>
  db().$queryRaw`
    SELECT i.slug, i.title FROM ${TABLE}
    JOIN "Entry" e ON e.id = i."entryId"
    JOIN "Revision" r ON r.id = e."publishedRevisionId"
    WHERE r.body @> ${JSON.stringify({ ingredients: [{ material }] })}::jsonb
    ORDER BY i."sortTitle", i.slug`

/** The recipe published at this address, or its earlier revision of that number; null when none can be read. */
export const recipeBySlug = (slug: string, revision?: number): Promise<Published<RecipeBody> | null> =>
  publishedBySlug('recipe', slug, revision ?? null)

function where({ unit, use, family }: RecipeFilter): Prisma.Sql {
  return every([
    ...(unit === undefined ? [] : [Prisma.sql`i.units && ${oneOrMore(unit)}::text[]`]),
    ...(use === undefined ? [] : [Prisma.sql`i.uses @> ${[use]}::text[]`]),
    ...(family === undefined ? [] : [Prisma.sql`i.family = ${family}`]),
  ])
}
