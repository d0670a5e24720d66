import type { Content } from '#lib/content/index.ts'
import type { Db } from '#lib/db/client.ts'
import { splitRef } from '#lib/db/projection/source.ts'
import { type BodyOf, readBody, type WrittenKind } from '#lib/entry/body.ts'
import type { CaseBody } from '#lib/entry/case.ts'
import type { RecipeBody } from '#lib/entry/recipe.ts'
import type { VisitBody } from '#lib/entry/visit.ts'
import type { FieldFault } from '#lib/errors.ts'

/** The parts of content that bodies point into. */
export type References = Pick<Content, 'sources' | 'rows' | 'materials' | 'vocabularies'>

interface Check {
  tx: Db
  content: References
  slug: string
  /** `YYYY-MM-DD`. */
  today: string
}

const CHECKS: { readonly [K in WrittenKind]: (body: BodyOf<K>, check: Check) => Promise<FieldFault[]> } = {
  recipe: checkRecipe,
  case: checkCase,
  visit: checkVisit,
}

/** Every field of a well-formed body that points at something that is not there. */
export const checkReferences = <K extends WrittenKind>(
  kind: K,
  body: BodyOf<K>,
  check: Check,
): Promise<FieldFault[]> => CHECKS[kind](body, check)

async function checkRecipe(body: RecipeBody, { tx, content }: Check): Promise<FieldFault[]> {
  return [
    ...unknown(
      body.ingredients,
      (item, i) => [`ingredients.${i}.material`, item.material],
      content.materials,
    ),
    ...unknown(body.units, (unit, i) => [`units.${i}`, unit], content.vocabularies.get('units')),
    ...unknown(body.follows, (row, i) => [`follows.${i}`, row], content.rows),
    ...unknown(body.sources, (item, i) => [`sources.${i}.source`, item.source], content.sources),
    ...(await unknownRecipes(tx, body.adaptedFrom === undefined ? [] : [['adaptedFrom', body.adaptedFrom]])),
  ]
}

async function checkCase(body: CaseBody, { tx, content, slug, today }: Check): Promise<FieldFault[]> {
  const mixed = body.works.flatMap((work, i) =>
    (work.mixed?.ingredients ?? []).map((item, j) => ({
      ...item,
      field: `works.${i}.mixed.ingredients.${j}.material`,
    })),
  )
  const mortars = new Set(body.mortars.map(({ id }) => id))
  const matched = body.works.map((work, i) => ({ field: `works.${i}.mortar`, id: work.mortar }))
  const recipes = body.works.map((work, i) => ({ field: `works.${i}.recipe`, ref: work.recipe }))
  return [
    ...unknown(
      body.fabric.units,
      (item, i) => [`fabric.units.${i}.unit`, item.unit],
      content.vocabularies.get('units'),
    ),
    ...unknown(mixed, (item) => [item.field, item.material], content.materials),
    ...repeated('works', body.works),
    ...repeated('mortars', body.mortars),
    ...matched.flatMap(({ field, id }) =>
      id === undefined || mortars.has(id) ? [] : [{ field, code: 'unknown', value: id }],
    ),
    ...(body.recordedOn > today
      ? [{ field: 'recordedOn', code: 'in-the-future', value: body.recordedOn }]
      : []),
    ...(await unknownRecipes(
      tx,
      recipes.flatMap(({ field, ref }) => (ref === undefined ? [] : [[field, ref] as const])),
    )),
    ...(await missingWorks(tx, slug, body)),
  ]
}

async function checkVisit(body: VisitBody, { tx, today }: Check): Promise<FieldFault[]> {
  const early: FieldFault[] = body.on > today ? [{ field: 'on', code: 'in-the-future', value: body.on }] : []
  return [...early, ...(await unknownWork(tx, body))]
}

/** What is wrong with the case and the work that a visit tells of, as they are published now. */
export async function unknownWork(tx: Db, body: VisitBody): Promise<FieldFault[]> {
  const found = await tx.entry.findFirst({
    where: { slug: body.case, kind: 'case' },
    select: { published: { select: { body: true, shape: true } } },
  })
  if (!found?.published) return [{ field: 'case', code: 'unknown', value: body.case }]
  const { works } = readBody('case', found.published.body, found.published.shape)
  const work = works.find(({ id }) => id === body.work)
  if (work === undefined) return [{ field: 'work', code: 'unknown', value: body.work }]
  if (body.on.slice(0, work.started.length) < work.started)
    return [{ field: 'on', code: 'before-start', value: body.on, limit: work.started }]
  return []
}

/** Once visits tell of a work, the case keeps it. */
export async function missingWorks(tx: Db, slug: string, body: CaseBody): Promise<FieldFault[]> {
  const kept = new Set(body.works.map(({ id }) => id))
  const visited = await tx.$queryRaw<{ work: string }[]>`
    SELECT DISTINCT v.work FROM "VisitIndex" v JOIN "Entry" e ON e.id = v."caseEntryId"
    WHERE e.slug = ${slug} ORDER BY v.work`
  return visited
    .filter(({ work }) => !kept.has(work))
    .map(({ work }) => ({ field: 'works', code: 'work-has-visits', value: work }))
}

/** References to recipe revisions that nobody can read. */
async function unknownRecipes(tx: Db, refs: readonly (readonly [string, string])[]): Promise<FieldFault[]> {
  if (refs.length === 0) return []
  const rows = await tx.$queryRaw<{ ref: string }[]>`
    SELECT e.slug || '@' || r.number AS ref FROM "Entry" e JOIN "Revision" r ON r."entryId" = e.id
    WHERE e.slug = ANY(${refs.map(([, ref]) => splitRef(ref).slug)}::text[])
      AND e.kind = 'recipe' AND e."withdrawnAt" IS NULL AND r.state IN ('published', 'superseded')`
  const known = new Set(rows.map(({ ref }) => ref))
  return refs
    .filter(([, ref]) => !known.has(ref))
    .map(([field, ref]) => ({ field, code: 'unknown', value: ref }))
}

function unknown<T>(
  items: readonly T[],
  at: (item: T, index: number) => readonly [field: string, id: string],
  known: ReadonlyMap<string, unknown> | undefined,
): FieldFault[] {
  return items
    .map(at)
    .flatMap(([field, id]) => (known?.has(id) ? [] : [{ field, code: 'unknown', value: id }]))
}

function repeated(list: string, items: readonly { readonly id: string }[]): FieldFault[] {
  const first = new Map(items.map(({ id }, i) => [id, i] as const).reverse())
  return items.flatMap(({ id }, i) =>
    first.get(id) === i ? [] : [{ field: `${list}.${i}.id`, code: 'repeated', value: id }],
  )
}
