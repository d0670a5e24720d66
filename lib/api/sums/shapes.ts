import { z } from 'zod'
import { content } from '#lib/content/index.ts'
import { slug } from '#lib/entry/fields.ts'
import { ingredient } from '#lib/entry/recipe.ts'
import { Refusal } from '#lib/errors.ts'
import { toRange } from '#lib/mortar/amount.ts'
import type { Outcome } from '#lib/mortar/fault.ts'
import { PROPERTY_LIMITS, PROPERTY_UNITS, type Properties, type PropertyName } from '#lib/mortar/material.ts'
import { type Operation, operation } from '../operation.ts'
import { amount } from '../shapes.ts'

type Bounds = Parameters<typeof amount>[0]

/** An uncertain input: one number, or a range. The sums get a range. */
export const ranged = (bounds: Bounds = {}) => amount(bounds).transform(toRange)

/** The same between 0 and 1, and in %. */
export const share = ranged({ min: 0, max: 1 })
export const percent = ranged({ min: 0, max: 100 })
export const above = (max?: number) => ranged(max === undefined ? { above: 0 } : { above: 0, max })

const figures = z
  .strictObject(
    Object.fromEntries(
      (Object.keys(PROPERTY_UNITS) as PropertyName[]).map((name) => {
        const { above, min, max } = PROPERTY_LIMITS[name]
        const bounds = {
          ...(above !== undefined && { above }),
          ...(min !== undefined && { min }),
          ...(max !== undefined && { max }),
        }
        return [name, amount(bounds).describe(PROPERTY_UNITS[name]).optional()]
      }),
    ),
  )
  .transform((given): Properties => {
    const known = Object.entries(given).flatMap(([name, figure]) => {
      if (figure === undefined) return []
      const property = { ...toRange(figure), unit: PROPERTY_UNITS[name as PropertyName], basis: 'measured' }
      return [[name, property]]
    })
    return Object.fromEntries(known)
  })

const byId = slug
  .describe('Id of a material of this site, for its default figures')
  .transform((id, context): Properties => {
    const material = content().materials.get(id)
    if (material) return material.properties
    context.addIssue({ code: 'custom', message: 'unknown' })
    return z.NEVER
  })

/** A material by its id here, or by figures of one's own. */
export const material = z.union([byId, figures])

/** A recipe's parts, and its materials by the names that the ingredients give them. */
export const recipe = {
  ingredients: z
    .array(ingredient.omit({ note: true }))
    .min(1)
    .max(12),
  materials: z.record(z.string(), material),
}

type Stated<T> = { [K in keyof T]: Exclude<T[K], undefined> }

/** A body without the fields that were left out: the sums tell absent from undefined. */
export const stated = <T extends object>(body: T): Stated<T> =>
  Object.fromEntries(Object.entries(body).filter(([, value]) => value !== undefined)) as Stated<T>

/** What a calculation answers, or a refusal that names each fault. */
export function settle<T>(outcome: Outcome<T>): T {
  if (outcome.ok) return outcome.value
  throw new Refusal('invalid', 'The sums refuse what was given.', outcome.faults)
}

/**
 * A calculation as an operation of the interface, under `/api/v1/sums/`.
 *
 * @param name kebab-case, the last part of the address
 */
export function sum<B, A>(
  name: string,
  summary: string,
  body: z.ZodType<B>,
  answer: z.ZodType<A>,
  calculate: (body: B) => Outcome<unknown>,
): Operation<unknown, unknown, B, A> {
  return operation({
    id: name.replace(/-(\w)/g, (_, letter: string) => letter.toUpperCase()),
    method: 'POST',
    path: `/api/v1/sums/${name}`,
    summary,
    body,
    answer,
    run: async ({ body: given }) => answer.parse(settle(calculate(given))),
  })
}
