import { content } from '#lib/content/index.ts'

/** A unit term and every narrower one: asking for limestone finds chalk too. */
export function unitsWithin(unit: string): string[] {
  const terms = [...(content().vocabularies.get('units')?.values() ?? [])]
  const found = [unit]
  for (const broader of found)
    for (const term of terms) if (term.broader === broader && !found.includes(term.id)) found.push(term.id)
  return found
}
