import { recipeTitles } from '#lib/db/evidence/works.ts'
import { selectWorks } from './works-scope.ts'
import { countFacet, countSet } from './works-traits.ts'

/** What groups of walls are commonly chosen by. */
export const CHOICES = ['family', 'recipe', 'unit', 'method', 'use', 'country', 'row'] as const
export type ChoiceOf = (typeof CHOICES)[number]

/** A value of which some watched work tells. */
export interface Choice {
  readonly of: ChoiceOf
  readonly value: string
  /** Of a recipe, its title now; else null. */
  readonly title: string | null
}

/** More of one kind than a list can hold are found by searching. */
const MOST = 100

/** Works of the whole record that tell of end points; the day matters to none of what is counted here. */
const WHOLE = { filter: {}, asOf: '2000-01-01' }

/** Everything that a group of watched works can be chosen by; of each the hundred with the most works. */
export async function evidenceChoices(): Promise<Choice[]> {
  const found = await selectWorks([WHOLE], ([whole]) =>
    whole === undefined
      ? []
      : CHOICES.map((of) => ({
          of,
          values: most(
            of === 'unit' || of === 'country'
              ? countFacet(whole, of)
              : countSet(whole, of === 'row' ? 'rows' : of),
          ),
        })),
  )
  const titles = await recipeTitles(found.flatMap(({ of, values }) => (of === 'recipe' ? values : [])))
  return found.flatMap(({ of, values }) =>
    values.map((value) => ({ of, value, title: of === 'recipe' ? (titles.get(value) ?? null) : null })),
  )
}

const most = (counts: ReadonlyMap<string, number>): string[] =>
  [...counts]
    .sort(([a, works], [b, others]) => others - works || (a < b ? -1 : 1))
    .slice(0, MOST)
    .map(([value]) => value)
    .sort()

/** How many watched works used a recipe that follows each of these table rows; rows without any are left out. */
export async function watchedRows(refs: readonly string[]): Promise<ReadonlyMap<string, number>> {
  const counts = await selectWorks([WHOLE], ([whole]) =>
    whole === undefined ? new Map<string, number>() : countSet(whole, 'rows'),
  )
  return new Map(refs.flatMap((ref) => (counts.has(ref) ? [[ref, counts.get(ref) ?? 0]] : [])))
}
