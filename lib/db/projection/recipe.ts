import { readBody } from '#lib/entry/body.ts'
import type { RecipeBody } from '#lib/entry/recipe.ts'
import type { CitationModel, RecipeIndexModel } from '../../../prisma/generated/models.ts'
import type { Db } from '../client.ts'
import { disputedEntries } from '../disputes.ts'
import { citationRows } from './citations.ts'
import { distinct, entryIds, publishedRows, sortable, splitRef } from './source.ts'

export interface RecipeRows {
  readonly recipes: RecipeIndexModel[]
  readonly citations: CitationModel[]
}

/** The index rows that these recipes must have, told from their bodies and the indexed cases that used them. */
export async function recipeRows(tx: Db, ids: readonly string[]): Promise<RecipeRows> {
  const sources = (await publishedRows(tx, 'recipe', ids)).map((row) => ({
    ...row,
    body: readBody('recipe', row.body, row.shape),
  }))
  const use = await recipeUse(
    tx,
    sources.map(({ entryId }) => entryId),
  )
  const disputed = await disputedEntries(
    tx,
    sources.map(({ entryId }) => entryId),
  )
  const adapted = await entryIds(
    tx,
    'recipe',
    sources.flatMap(({ body }) => (body.adaptedFrom ? [splitRef(body.adaptedFrom).slug] : [])),
  )
  return {
    recipes: sources.map(({ body, entryId, slug, revision, publishedAt }) => {
      const { title, summary, family, standing, invented } = body
      const { cases, longestYears, units } = use.get(entryId) ?? { cases: 0, longestYears: null, units: [] }
      return {
        ...{ entryId, slug, revision, title, sortTitle: sortable(title), summary, family },
        ...{ uses: distinct(body.uses), standing, invented, publishedAt },
        disputed: disputed.has(entryId),
        ...{ units: distinct([...body.units, ...units]), cases, longestYears },
      }
    }),
    citations: sources.flatMap(({ body, entryId, revision }) =>
      citationRows(entryId, revision, targets(body, adapted)),
    ),
  }
}

interface Use {
  readonly recipeEntryId: string
  readonly cases: number
  readonly longestYears: number | null
  readonly units: string[]
}

/** How many published cases used each recipe, for how long the longest is watched, and on which units. */
async function recipeUse(tx: Db, ids: readonly string[]): Promise<ReadonlyMap<string, Use>> {
  const rows = await tx.$queryRaw<Use[]>`
    SELECT u."recipeEntryId", count(*)::int AS cases,
      max(c."yearsWatched") FILTER (WHERE c."yearsWatched" >= 0) AS "longestYears",
      array(SELECT DISTINCT unnest(c2.units) FROM "WorkIndex" w2 JOIN "CaseIndex" c2 ON c2."entryId" = w2."caseEntryId"
        WHERE w2."recipeEntryId" = u."recipeEntryId") AS units
    FROM (SELECT DISTINCT "recipeEntryId", "caseEntryId" FROM "WorkIndex"
      WHERE "recipeEntryId" = ANY(${[...ids]}::uuid[])) u
    JOIN "CaseIndex" c ON c."entryId" = u."caseEntryId"
    GROUP BY u."recipeEntryId"`
  return new Map(rows.map((row) => [row.recipeEntryId, row]))
}

function targets(body: RecipeBody, adapted: ReadonlyMap<string, string>): Partial<CitationModel>[] {
  const from = body.adaptedFrom === undefined ? undefined : splitRef(body.adaptedFrom)
  const recipeEntryId = from && adapted.get(from.slug)
  return [
    ...body.sources.map(({ source, locator = null }) => ({ source, locator })),
    ...body.follows.map((row) => ({ row })),
    ...(body.laboratory ?? []).flatMap(({ source: cited }) =>
      cited === undefined ? [] : [{ source: cited.source, locator: cited.locator ?? null }],
    ),
    ...(from && recipeEntryId ? [{ recipeEntryId, recipeRevision: from.revision }] : []),
  ]
}
