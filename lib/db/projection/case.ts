import { readBody } from '#lib/entry/body.ts'
import type { CaseBody, Work } from '#lib/entry/case.ts'
import { lastDayOf, yearsBetween } from '#lib/entry/dates.ts'
import type { RecipeBody } from '#lib/entry/recipe.ts'
import type {
  CaseIndexModel,
  CitationModel,
  VisitIndexModel,
  WorkIndexModel,
} from '../../../prisma/generated/models.ts'
import { visitsByOthers } from '../authors.ts'
import type { Db } from '../client.ts'
import { disputedEntries } from '../disputes.ts'
import { citationRows } from './citations.ts'
import { qualityOf } from './quality.ts'
import { distinct, entryIds, type PublishedRow, publishedRows, splitRef } from './source.ts'
import { materialsOf, usedRecipes } from './used-recipes.ts'

export interface CaseRows {
  readonly cases: CaseIndexModel[]
  readonly works: WorkIndexModel[]
  readonly citations: CitationModel[]
}

/** The index rows that these cases must have, told from their bodies and the visits indexed for them. */
export async function caseRows(tx: Db, ids: readonly string[]): Promise<CaseRows> {
  const sources = (await publishedRows(tx, 'case', ids)).map((row) => ({
    ...row,
    body: readBody('case', row.body, row.shape),
  }))
  const visits = await visitsOf(
    tx,
    sources.map(({ entryId }) => entryId),
  )
  const recipes = await entryIds(
    tx,
    'recipe',
    sources.flatMap(({ body }) =>
      body.works.flatMap(({ recipe }) => (recipe ? [splitRef(recipe).slug] : [])),
    ),
  )
  const used = await usedRecipes(
    tx,
    sources.flatMap(({ body }) => body.works.flatMap(({ recipe }) => recipe ?? [])),
  )
  const disputed = await disputedEntries(tx, [
    ...sources.map(({ entryId }) => entryId),
    ...[...visits.values()].flatMap((some) => some.map(({ entryId }) => entryId)),
  ])
  const byOthers = await visitsByOthers(
    sources.map(({ entryId }) => entryId),
    tx,
  )
  const works = sources.flatMap(({ entryId, body }) =>
    body.works.map((work) => workRow(entryId, work, recipes)),
  )
  return {
    cases: sources.map((source) =>
      caseRow(source, visits.get(source.entryId) ?? [], { used, disputed, byOthers }),
    ),
    works,
    // A case cites the recipe revisions that its works used.
    citations: sources.flatMap(({ entryId, revision }) =>
      citationRows(
        entryId,
        revision,
        works.flatMap(({ caseEntryId, recipeEntryId, recipeRevision }) =>
          caseEntryId === entryId && recipeEntryId !== null ? [{ recipeEntryId, recipeRevision }] : [],
        ),
      ),
    ),
  }
}

/** The indexed visits of each case, oldest first. */
async function visitsOf(tx: Db, ids: string[]): Promise<ReadonlyMap<string, VisitIndexModel[]>> {
  const groups = new Map(ids.map((id): [string, VisitIndexModel[]] => [id, []]))
  const where = { caseEntryId: { in: ids } }
  for (const visit of await tx.visitIndex.findMany({ where, orderBy: [{ on: 'asc' }, { slug: 'asc' }] }))
    groups.get(visit.caseEntryId)?.push(visit)
  return groups
}

function caseRow(
  source: PublishedRow & { body: CaseBody },
  visits: readonly VisitIndexModel[],
  {
    used,
    disputed,
    byOthers,
  }: {
    readonly used: ReadonlyMap<string, RecipeBody>
    readonly disputed: ReadonlySet<string>
    readonly byOthers: ReadonlySet<string>
  },
): CaseIndexModel {
  const { entryId, slug, revision, publishedAt, body } = source
  const latest = visits.at(-1)
  const { exposure } = body
  const years = Math.max(-1, ...body.works.map((work) => yearsWatched(work, visits)))
  return {
    entryId,
    slug,
    revision,
    title: body.title,
    summary: body.summary,
    country: body.place.country,
    region: body.place.region,
    units: distinct(body.fabric.units.map(({ unit }) => unit)),
    wall: body.fabric.wall,
    uses: distinct(body.works.map(({ use }) => use)),
    invented: body.invented,
    publishedAt,
    visits: visits.length,
    yearsWatched: years,
    latestOn: latest?.on ?? null,
    latestJoint: latest?.joint ?? null,
    latestUnit: latest?.unit ?? null,
    latestDamp: latest?.damp ?? null,
    structure: body.structure.type,
    ...{ drivingRain: exposure.drivingRain, frost: exposure.frost, ground: exposure.ground },
    salts: distinct(exposure.salts),
    ...{ latitude: body.place.latitude ?? null, longitude: body.place.longitude ?? null },
    ...mortarOf(body.works, used),
    // A case is open to doubt while one of its visits is.
    disputed: [entryId, ...visits.map((visit) => visit.entryId)].some((id) => disputed.has(id)),
    ...qualityOf(body, visits, years, byOthers),
  }
}

/** What the works' mortars were, by the recipe revisions that they used and by what went into the mixer. */
function mortarOf(works: readonly Work[], used: ReadonlyMap<string, RecipeBody>) {
  const recipes = works.flatMap(({ recipe }) => used.get(recipe ?? '') ?? [])
  return {
    families: distinct(recipes.map(({ family }) => family)),
    methods: distinct(recipes.map(({ method }) => method)),
    recipes: distinct(
      works.flatMap(({ recipe }) => (recipe && used.has(recipe) ? splitRef(recipe).slug : [])),
    ),
    rows: distinct(recipes.flatMap(({ follows }) => follows)),
    materials: distinct(works.flatMap((work) => materialsOf(work, used))),
  }
}

/** From the baseline visit, or else from the last day the work can have ended on; -1 with no visit. */
function yearsWatched(work: Work, visits: readonly VisitIndexModel[]): number {
  const days = visits.filter((visit) => visit.work === work.id)
  const last = days.at(-1)
  if (last === undefined) return -1
  const baseline = days.find((visit) => visit.baseline)
  const from = baseline ? isoDay(baseline.on) : lastDayOf(work.finished)
  return Math.max(0, yearsBetween(from, isoDay(last.on)))
}

const isoDay = (date: Date) => date.toISOString().slice(0, 10)

function workRow(caseEntryId: string, work: Work, recipes: ReadonlyMap<string, string>): WorkIndexModel {
  const { id, use, started, finished, areaM2 = null, ended } = work
  const ref = work.recipe === undefined ? undefined : splitRef(work.recipe)
  const recipeEntryId = (ref && recipes.get(ref.slug)) ?? null
  return {
    caseEntryId,
    work: id,
    use,
    started,
    finished,
    areaM2,
    recipeEntryId,
    recipeRevision: recipeEntryId === null ? null : (ref?.revision ?? null),
    endedHow: ended?.how ?? null,
    endedOn: ended?.on ?? null,
  }
}
