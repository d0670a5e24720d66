import { content } from '#lib/content/index.ts'
import { caseBySlug } from '#lib/db/cases.ts'
import { materialsIn, readMaterials } from '#lib/db/materials.ts'
import { type PhotoFacts, photoFacts } from '#lib/db/photos.ts'
import { revisionNames } from '#lib/db/revisions.ts'
import type { BodyOf, WrittenKind } from '#lib/entry/body.ts'
import type { CaseBody } from '#lib/entry/case.ts'
import type { Path } from '#lib/entry/json.ts'
import type { RecipeBody } from '#lib/entry/recipe.ts'
import type { VisitBody } from '#lib/entry/visit.ts'
import { labelOf } from '../_ui/label.ts'
import { words } from '../_words/index.ts'
import { pickOf } from '../_write/look.ts'
import { readPicks } from '../_write/picks.ts'
import { fieldLabel, formName } from './field-name.ts'

/** What versions point at, read once for a page. */
export interface Shown {
  /** What a text of a body names, in words; undefined where it stands for itself. */
  readonly nameOf: (path: Path, text: string) => string | undefined
  readonly pictures: ReadonlyMap<string, PhotoFacts>
}

/** Reads what these bodies of one kind point at: recipes, the case and the work of a visit, sources, pictures. */
export async function shownIn(kind: WrittenKind, bodies: readonly unknown[]): Promise<Shown> {
  const there = bodies.filter(
    (body): body is BodyOf<WrittenKind> => typeof body === 'object' && body !== null,
  )
  const cases = kind === 'case' ? (there as CaseBody[]) : []
  const visits = kind === 'visit' ? (there as VisitBody[]) : []
  const recipes = kind === 'recipe' ? (there as RecipeBody[]) : []
  await readMaterials(there.flatMap(materialsIn))
  const [picks, titles, visited, pictures] = await Promise.all([
    readPicks(),
    revisionNames([
      ...cases.flatMap(({ works }) => works.flatMap(({ recipe }) => recipe ?? [])),
      ...recipes.flatMap(({ adaptedFrom }) => adaptedFrom ?? []),
    ]),
    visits[0] === undefined ? null : caseBySlug(visits[0].case),
    photoFacts(visits.flatMap(({ photos = [] }) => photos.map(({ sha256 }) => sha256))),
  ])
  const workTitle = (id: string) => visited?.body.works.find((work) => work.id === id)?.title
  const mortarPlace = (id: string) =>
    cases.flatMap(({ mortars }) => mortars).find((mortar) => mortar.id === id)?.where
  const revisionTitle = (ref: string) => {
    const title = titles.get(ref)?.title
    return title && words('pages')('recipe.revisionOf', { title, revision: ref.split('@')[1] ?? '' })
  }
  const nameOf = (path: Path, text: string): string | undefined => {
    const name = formName(path)
    if (name.endsWith('.recipe') || name === 'adaptedFrom') return revisionTitle(text)
    if (kind === 'visit' && name === 'case') return visited?.body.title
    if (kind === 'visit' && name === 'work') return workTitle(text)
    if (name === 'works.0.mortar') return mortarPlace(text)
    if (name === 'table') return content().tables.get(text)?.title
    if (name === 'surveyClass') return labelOf('survey-classes', text)
    if (name.startsWith('overrides.') && path.at(-1) === 'field') return fieldLabel(text.split('.'))
    const pick = pickOf(name)
    return pick && picks[pick].choices.find(({ id }) => id === text)?.label
  }
  return { nameOf, pictures }
}
