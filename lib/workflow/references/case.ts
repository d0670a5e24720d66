import type { Db } from '#lib/db/client.ts'
import { usablePhotos } from '#lib/db/photos.ts'
import { readBody } from '#lib/entry/body.ts'
import type { CaseBody } from '#lib/entry/case.ts'
import { caseDateFaults, visitDateFaults } from '#lib/entry/date-faults.ts'
import type { VisitBody } from '#lib/entry/visit.ts'
import type { FieldFault } from '#lib/errors.ts'
import { type Check, repeated, unknown, unknownMaterials, unknownRecipes } from './find.ts'
import { foreignSheets } from './sheets.ts'

export async function checkCase(body: CaseBody, check: Check): Promise<FieldFault[]> {
  const { tx, content, slug, today } = check
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
    ...(await unknownMaterials(
      tx,
      content,
      mixed.map(({ field, material }) => [field, material] as const),
    )),
    ...repeated('works', body.works),
    ...repeated('mortars', body.mortars),
    ...matched.flatMap(({ field, id }) =>
      id === undefined || mortars.has(id) ? [] : [{ field, code: 'unknown', value: id }],
    ),
    ...caseDateFaults(body, today),
    ...(await unknownRecipes(
      tx,
      recipes.flatMap(({ field, ref }) => (ref === undefined ? [] : [[field, ref] as const])),
    )),
    ...(await missingWorks(tx, slug, body)),
    ...(await foreignSheets(body.sheets, check)),
  ]
}

export async function checkVisit(body: VisitBody, check: Check): Promise<FieldFault[]> {
  const { tx, content, slug, today, authorKey } = check
  const { deterioration = [], surveyClass } = body
  return [
    ...unknown(
      deterioration,
      (term, i) => [`deterioration.${i}`, term],
      content.vocabularies.get('deterioration'),
    ),
    ...unknown(
      surveyClass === undefined ? [] : [surveyClass],
      (term) => ['surveyClass', term],
      content.vocabularies.get('survey-classes'),
    ),
    ...(await unusablePhotos(tx, body, authorKey, slug)),
    ...(await unknownWork(tx, body, today)),
    ...(await foreignSheets(body.sheets, check)),
  ]
}

/** A visit shows pictures that its author uploaded, or that it showed before; each once. */
async function unusablePhotos(
  tx: Db,
  { photos = [] }: VisitBody,
  authorKey: string,
  slug: string,
): Promise<FieldFault[]> {
  const shown = photos.map(({ sha256 }) => sha256)
  const usable = await usablePhotos(tx, shown, authorKey, slug)
  return shown.flatMap((sha256, i) => {
    const field = `photos.${i}.sha256`
    if (!usable.has(sha256)) return [{ field, code: 'unknown-photo', value: sha256 }]
    return shown.indexOf(sha256) < i ? [{ field, code: 'repeated', value: sha256 }] : []
  })
}

/** What is wrong with the case, the work and the day that a visit tells of, as they are published now. */
export async function unknownWork(tx: Db, body: VisitBody, today: string): Promise<FieldFault[]> {
  const found = await tx.entry.findFirst({
    where: { slug: body.case, kind: 'case' },
    select: { published: { select: { body: true, shape: true } } },
  })
  if (!found?.published) return [{ field: 'case', code: 'unknown-case', value: body.case }]
  const { works } = readBody('case', found.published.body, found.published.shape)
  const known = works.some(({ id }) => id === body.work)
  return [
    ...(known ? [] : [{ field: 'work', code: 'unknown', value: body.work }]),
    ...visitDateFaults(body, works, today),
  ]
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
