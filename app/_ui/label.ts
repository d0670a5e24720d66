import { content } from '#lib/content/index.ts'
import type { Term } from '#lib/content/types.ts'

/** The term of a vocabulary in content/vocabularies, or undefined for one that is not in it. */
export const termOf = (vocabulary: string, id: string): Term | undefined =>
  content().vocabularies.get(vocabulary)?.get(id)

/** A term's label; its id where the vocabulary has no such term (an older entry may name one). */
export const labelOf = (vocabulary: string, id: string): string => termOf(vocabulary, id)?.label ?? id

/** A material's label. */
export const materialLabel = (id: string): string => content().materials.get(id)?.label ?? id
