import { broaderPairs, termLine } from '#lib/content/term-tree.ts'
import { labelOf } from './label.ts'

/** A unit and all that it is a kind of, the unit first. */
export const unitLine = (id: string): string[] => termLine('units', id)

/** Every unit with each term that covers it, itself included: what counting under the hierarchy needs. */
export const unitPairs = () => broaderPairs('units')

/** Units that have a count, as choices in tree order, narrower ones set in by dashes. */
export function unitOptions(counts: readonly { id: string; count: number }[]) {
  const countOf = new Map(counts.map(({ id, count }) => [id, count]))
  return [...countOf.keys()]
    .map((id) => ({
      id,
      line: unitLine(id)
        .reverse()
        .map((one) => labelOf('units', one)),
    }))
    .sort((a, b) => a.line.join('\u0000').localeCompare(b.line.join('\u0000'), 'en'))
    .map(({ id, line }) => ({
      id,
      label: `${'– '.repeat(line.length - 1)}${line.at(-1)}`,
      count: countOf.get(id) ?? 0,
    }))
}
