import type { BodyOf, WrittenKind } from '#lib/entry/body.ts'
import type { FieldFault } from '#lib/errors.ts'
import { checkCase, checkVisit } from './references/case.ts'
import { type Check, taken } from './references/find.ts'
import { checkMaterial, checkRecipe, checkRow } from './references/recipe.ts'

export type { References } from './references/find.ts'

const CHECKS: { readonly [K in WrittenKind]: (body: BodyOf<K>, check: Check) => Promise<FieldFault[]> } = {
  recipe: checkRecipe,
  case: checkCase,
  visit: checkVisit,
  material: checkMaterial,
  source: async (_, { content, slug }) => taken(slug, content.sources),
  row: checkRow,
}

/** Every field of a well-formed body that points at something that is not there. */
export const checkReferences = <K extends WrittenKind>(
  kind: K,
  body: BodyOf<K>,
  check: Check,
): Promise<FieldFault[]> => CHECKS[kind](body, check)
