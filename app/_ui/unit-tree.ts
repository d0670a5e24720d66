import { content } from '#lib/content/index.ts'
import type { Broader } from '#lib/db/facet.ts'
import { labelOf } from './label.ts'

const parentOf = (id: string) => content().vocabularies.get('units')?.get(id)?.broader

/** A unit and all that it is a kind of, the unit first. */
export function unitLine(id: string): string[] {
  const line = [id]
  for (let at = parentOf(id); at !== undefined; at = parentOf(at)) line.push(at)
  return line
}

/** Every unit with each term that covers it, itself included: what counting under the hierarchy needs. */
export const unitPairs = (): Broader =>
  [...(content().vocabularies.get('units')?.keys() ?? [])].flatMap((id) =>
    unitLine(id).map((broader) => [id, broader] as const),
  )

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
