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
import { asWritten, inEnglish } from '../_ui/as-written.ts'
import { labelOf } from '../_ui/label.ts'
import { words } from '../_words/index.ts'
import { pickOf } from '../_write/look.ts'
import { readPicks } from '../_write/picks.ts'
import { fieldLabel, formName } from './field-name.ts'
import { langOfPick, termLang } from './pick-lang.ts'

/** What a text of a body names. */
export interface Named {
  readonly words: string
  /** Absent where the words are ours, in the language of the page. */
  readonly lang?: string
  /** What we say around them. */
  readonly say?: (words: string) => string
}

/** What versions point at, read once for a page. */
export interface Shown {
  /** What a text of a body names; undefined where it stands for itself. */
  readonly nameOf: (path: Path, text: string) => Named | undefined
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
  const written = (text: string | undefined): Named | undefined =>
    text === undefined ? undefined : { words: text, ...asWritten() }
  const workTitle = (id: string) => visited?.body.works.find((work) => work.id === id)?.title
  const mortarPlace = (id: string) =>
    cases.flatMap(({ mortars }) => mortars).find((mortar) => mortar.id === id)?.where
  const revisionTitle = (ref: string) => {
    const [, revision = ''] = ref.split('@')
    const named = written(titles.get(ref)?.title)
    return (
      named && { ...named, say: (title: string) => words('pages')('recipe.revisionOf', { title, revision }) }
    )
  }
  const nameOf = (path: Path, text: string): Named | undefined => {
    const name = formName(path)
    if (name.endsWith('.recipe') || name === 'adaptedFrom') return revisionTitle(text)
    if (kind === 'visit' && name === 'case') return written(visited?.body.title)
    if (kind === 'visit' && name === 'work') return written(workTitle(text))
    if (name === 'works.0.mortar') return written(mortarPlace(text))
    if (name === 'table') return tableNamed(text)
    if (name === 'surveyClass')
      return { words: labelOf('survey-classes', text), ...termLang('survey-classes', text) }
    if (name.startsWith('overrides.') && path.at(-1) === 'field')
      return { words: fieldLabel(text.split('.')) }
    const pick = pickOf(name)
    const label = pick && picks[pick].choices.find(({ id }) => id === text)?.label
    return label === undefined ? undefined : { words: label, ...langOfPick(pick, text) }
  }
  return { nameOf, pictures }
}

function tableNamed(id: string): Named | undefined {
  const table = content().tables.get(id)
  return table && { words: table.title, ...inEnglish() }
}
