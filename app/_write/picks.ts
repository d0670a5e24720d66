import { content } from '#lib/content/index.ts'
import type { Term } from '#lib/content/types.ts'
import { addedToChoose, type RecipeChoice, recipesToChoose } from '#lib/db/pick.ts'
import { nameOf } from '../_ui/label.ts'
import { eachLanguage, words } from '../_words/index.ts'
import { type Pick, pickFrom } from './pick.ts'

/** The lists that fields choose from by typing. */
export const PICKS = ['units', 'materials', 'deterioration', 'rows', 'sources', 'recipes'] as const
export type PickName = (typeof PICKS)[number]
export type Picks = Readonly<Record<PickName, Pick>>

const still = eachLanguage(
  (): Omit<Picks, 'materials' | 'sources' | 'recipes'> => ({
    units: pickTerms('units'),
    deterioration: pickTerms('deterioration'),
    rows: pickFrom(
      [...content().tables.values()].flatMap(({ title, rows }) =>
        rows.map(({ ref, label }) => ({
          id: ref,
          label: words('write')('pick.row', { table: title, row: label }),
        })),
      ),
    ),
  }),
)

/** All lists: those of content once and for all, those of the record as they stand. */
export async function readPicks(): Promise<Picks> {
  const [recipes, sources, materials] = await Promise.all([
    recipesToChoose(),
    addedToChoose('source'),
    addedToChoose('material'),
  ])
  return {
    ...still(),
    materials: pickFrom([
      ...[...content().materials.values()].map(({ id, label, names }) => ({
        id,
        label: nameOf(label, names),
        also: [label, ...Object.values(names).flat()],
      })),
      ...materials.map(({ slug, title }) => ({ id: slug, label: title })),
    ]),
    sources: pickFrom([
      ...[...content().sources.values()].map(({ id, title, issued }) => ({
        id,
        label: labelOfSource(title, issued?.['date-parts'][0]?.[0]),
      })),
      ...sources.map(({ slug, title }) => ({ id: slug, label: title })),
    ]),
    recipes: pickRecipes(recipes),
  }
}

/** The terms of a vocabulary, by all their names. */
export const pickTerms = (vocabulary: string): Pick =>
  pickFrom([...(content().vocabularies.get(vocabulary)?.values() ?? [])].map(choiceOf))

const choiceOf = ({ id, label, also = [], labels = {} }: Term) => ({
  id,
  label: nameOf(label, labels),
  also: [label, ...also, ...Object.values(labels).flat()],
})

const labelOfSource = (title: string, year: number | undefined): string =>
  year === undefined ? title : words('write')('pick.source', { title, year: String(year) })

/** A recipe is chosen in a fixed version: its title names the one published now, `slug@2` that one. */
function pickRecipes(recipes: readonly RecipeChoice[]): Pick {
  const refOf = ({ slug, revision }: RecipeChoice) => `${slug}@${revision}`
  const pick = pickFrom(
    recipes.map((recipe) => ({
      id: refOf(recipe),
      label: words('write')('pick.recipe', { title: recipe.title, ref: refOf(recipe) }),
      also: [recipe.title, recipe.slug, `/recipes/${recipe.slug}`],
    })),
  )
  const find = (name: string) => pick.find(name) ?? /(?:^|\()([a-z0-9-]+@[1-9]\d*)\)?$/.exec(name)?.[1]
  const titles = new Map(recipes.map(({ slug, title }) => [slug, title]))
  const show = (ref: string) => {
    const title = titles.get(ref.slice(0, ref.indexOf('@')))
    return title === undefined ? ref : words('write')('pick.recipe', { title, ref })
  }
  return { ...pick, find, show }
}
