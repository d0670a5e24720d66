import { content } from '#lib/content/index.ts'
import { termLine } from '#lib/content/term-tree.ts'
import type { Choice, ChoiceOf } from '#lib/search/works.ts'
import { asWritten, inEnglish } from '../_ui/as-written.ts'
import { facetLabel } from '../_ui/find/labels.ts'

/** A choice as a form offers it. */
export interface Option {
  readonly value: string
  readonly label: string
  readonly lang?: 'en' | ''
}

/** Titles of recipes and labels of rows, for the words of a filter. */
export const titlesOf = (choices: readonly Choice[]): ReadonlyMap<string, string> =>
  new Map(
    choices.flatMap(({ of, value, title }) => {
      const name = of === 'row' ? content().rows.get(value)?.label : title
      return name === undefined || name === null ? [] : [[value, name] as const]
    }),
  )

/** The values of one facet, by label; of units also all that they are kinds of. */
export function optionsOf(
  choices: readonly Choice[],
  of: ChoiceOf,
  chosen: readonly string[] = [],
): Option[] {
  const titles = titlesOf(choices)
  const values = choices.flatMap((choice) => (choice.of === of ? choice.value : []))
  const all = of === 'unit' ? values.flatMap((unit) => termLine('units', unit)) : values
  return [...new Set([...all, ...chosen])]
    .map((value) => ({
      value,
      label: facetLabel(of, value, titles),
      // Rows are content; a recipe's title is its writer's.
      ...(titles.has(value) && (of === 'row' ? inEnglish() : asWritten())),
    }))
    .sort((a, b) => a.label.localeCompare(b.label, 'en'))
}
