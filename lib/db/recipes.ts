import { isSlug } from '#lib/entry/fields.ts'
import type { RecipeBody } from '#lib/entry/recipe.ts'
import { type Family, STANDINGS, type Standing, type Use } from '#lib/entry/terms.ts'
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
import { materialsIn, readMaterials } from './materials.ts'
import { MOST, noSuchPage, pageSize } from './page.ts'
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
  readonly standing?: Standing | undefined
}

export interface RecipePage {
  readonly recipes: RecipeSummary[]
  readonly total: number
  /** Give it as `after` for the next page; null on the last. */
  readonly next: string | null
}

const TABLE = Prisma.sql`"RecipeIndex" i`

/**
 * Published recipes by title.
 *
 * @throws Refusal `invalid` when `after` is no recipe's slug
 */
export async function listRecipes(
  filter: RecipeFilter = {},
  { after, limit = 20 }: { after?: string | undefined; limit?: number | undefined } = {},
): Promise<RecipePage> {
  const size = pageSize(limit)
  const from = after === undefined ? Prisma.sql`true` : await afterRecipe(after)
  const [rows, totals] = await Promise.all([
    db().$queryRaw<RecipeSummary[]>`
      SELECT i.slug, i.revision, i.title, i.summary, i.family, i.uses, i.standing, i.units, i.cases,
        i."longestYears", i.invented
      FROM ${TABLE} WHERE ${where(filter)} AND ${from} ORDER BY i."sortTitle", i.slug LIMIT ${size + 1}`,
    db().$queryRaw<{ total: number }[]>`SELECT count(*)::int AS total FROM ${TABLE} WHERE ${where(filter)}`,
  ])
  const recipes = rows.slice(0, size)
  const next = rows.length > size ? (recipes.at(-1)?.slug ?? null) : null
  return { recipes, total: totals[0]?.total ?? 0, next }
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

/** Published recipes that name a material, by title; a hundred at most. */
export const recipesWith = (
  material: string,
): Promise<{ slug: string; title: string; invented: boolean }[]> =>
  db().$queryRaw`
    SELECT i.slug, i.title, i.invented FROM ${TABLE}
    JOIN "Entry" e ON e.id = i."entryId"
    JOIN "Revision" r ON r.id = e."publishedRevisionId"
    WHERE r.body @> ${JSON.stringify({ ingredients: [{ material }] })}::jsonb
    ORDER BY i."sortTitle", i.slug LIMIT ${MOST}`

export interface ReadRecipe extends Published<RecipeBody> {
  /** The graver of this revision's standing and that of the one published now: an old address hides no hazard. */
  readonly standing: Standing
  readonly standingReason: string | undefined
  /** The revision that tells this standing. */
  readonly standingFrom: number
}

/** The recipe published at this address, or its earlier revision of that number; null when none can be read. */
export async function recipeBySlug(slug: string, revision?: number): Promise<ReadRecipe | null> {
  const found = await publishedBySlug('recipe', slug, revision ?? null)
  if (found === null) return null
  await readMaterials(materialsIn(found.body))
  const now = found.revision < found.latest ? await publishedBySlug('recipe', slug, null) : null
  const { body, revision: standingFrom } = now && gravity(now.body) >= gravity(found.body) ? now : found
  return { ...found, standing: body.standing, standingReason: body.standingReason, standingFrom }
}

/** A recipe's body with the standing that it has today: what may be worked out from it rests on that. */
export const asItStands = ({ body, standing, standingReason }: ReadRecipe): RecipeBody => ({
  ...body,
  standing,
  ...(standingReason !== undefined && { standingReason }),
})

const gravity = ({ standing }: RecipeBody) => STANDINGS.indexOf(standing)

async function afterRecipe(slug: string): Promise<Prisma.Sql> {
  const found = isSlug(slug)
    ? await db().recipeIndex.findUnique({ where: { slug }, select: { sortTitle: true } })
    : null
  if (found === null) throw noSuchPage(slug)
  return Prisma.sql`(i."sortTitle", i.slug) > (${found.sortTitle}, ${slug})`
}

function where({ unit, use, family, standing }: RecipeFilter): Prisma.Sql {
  return every([
    ...(unit === undefined ? [] : [Prisma.sql`i.units && ${oneOrMore(unit)}::text[]`]),
    ...(use === undefined ? [] : [Prisma.sql`i.uses @> ${[use]}::text[]`]),
    ...(family === undefined ? [] : [Prisma.sql`i.family = ${family}`]),
    ...(standing === undefined ? [] : [Prisma.sql`i.standing = ${standing}`]),
  ])
}
