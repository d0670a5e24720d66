import type { z } from 'zod'
import { CASE_SHAPE, caseBody } from './case.ts'
import { MATERIAL_SHAPE, materialBody } from './material.ts'
import { RECIPE_SHAPE, recipeBody } from './recipe.ts'
import { ROW_SHAPE, rowBody } from './row.ts'
import { SOURCE_SHAPE, sourceBody } from './source.ts'
import { VISIT_SHAPE, visitBody } from './visit.ts'

/**
 * Every kind that can be written today: today's shape, its number, and one upgrade per earlier number
 * (`upgrades[0]` turns shape 1 into shape 2, and so on). Stored bodies are never rewritten.
 */
export const SHAPES = {
  recipe: { shape: RECIPE_SHAPE, schema: recipeBody, upgrades: [] },
  case: { shape: CASE_SHAPE, schema: caseBody, upgrades: [] },
  visit: { shape: VISIT_SHAPE, schema: visitBody, upgrades: [] },
  material: { shape: MATERIAL_SHAPE, schema: materialBody, upgrades: [] },
  source: { shape: SOURCE_SHAPE, schema: sourceBody, upgrades: [] },
  row: { shape: ROW_SHAPE, schema: rowBody, upgrades: [] },
} as const satisfies Record<
  string,
  { shape: number; schema: z.ZodType; upgrades: readonly ((old: unknown) => unknown)[] }
>

export type WrittenKind = keyof typeof SHAPES
export type BodyOf<K extends WrittenKind> = z.infer<(typeof SHAPES)[K]['schema']>

/**
 * A stored body in today's shape.
 *
 * @throws z.ZodError when the stored body does not fit the shape it claims
 * @throws RangeError when the shape is from a newer version of this program
 */
export function readBody<K extends WrittenKind>(kind: K, body: unknown, shape: number): BodyOf<K> {
  const { shape: today, schema, upgrades } = SHAPES[kind]
  if (shape > today)
    throw new RangeError(`${kind} body of shape ${shape} is newer than this program (${today})`)
  const steps: readonly ((old: unknown) => unknown)[] = upgrades
  return schema.parse(steps.slice(shape - 1).reduce((old, upgrade) => upgrade(old), body)) as BodyOf<K>
}
