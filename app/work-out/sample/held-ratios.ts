import { setImmediate } from 'node:timers/promises'
import { content } from '#lib/content/index.ts'
import { recipeMixes } from '#lib/db/recipe-mixes.ts'
import { LIME_STATES, type LimeState } from '#lib/entry/terms.ts'
import type { Range } from '#lib/mortar/range.ts'
import { workedProportions } from '../../_ui/worked.ts'
import type { HeldRatio } from '../../_ui/workshop/brought.ts'
import { allRatios } from '../../compare/ratios.ts'

type Lime = readonly { readonly role: string; readonly state: string }[]

/** Proportions of the tables' rows and of published recipes, each in the state that its lime is stated in. */
export async function heldRatios(): Promise<HeldRatio[]> {
  const [rows, mixes] = await Promise.all([heldRows(), recipeMixes()])
  const recipes: HeldRatio[] = []
  for (const { slug, title, invented, ingredients } of mixes) {
    const worked = workedProportions(ingredients)
    const found = worked.ok
      ? pick(ingredients, (state) => worked.value.states[state]?.aggregateDry ?? null)
      : undefined
    if (found)
      recipes.push({
        id: slug,
        label: title,
        href: `/recipes/${slug}`,
        ...found,
        ...(invented && { invented }),
      })
    // The first asking works out a hundred recipes; others get their turn between them.
    await setImmediate()
  }
  return [...recipes, ...rows]
}

async function heldRows(): Promise<HeldRatio[]> {
  const ratios = await allRatios()
  const { rows, tables } = content()
  return [...rows.values()].flatMap(({ ref, id, table, label, ingredients }) => {
    const found = pick(ingredients, (state) => ratios[ref]?.[state] ?? null)
    return found
      ? [
          {
            id: ref,
            label: `${tables.get(table)?.title ?? table}: ${label}`,
            href: `/tables/${table}#${id}`,
            ...found,
          },
        ]
      : []
  })
}

/** The ratio in the lime's own state, or in the first that is known. */
function pick(ingredients: Lime, at: (state: LimeState) => Range | null) {
  const stated = ingredients.find(({ role }) => role === 'lime')?.state
  const own = LIME_STATES.find((one) => one === stated)
  const state = own && at(own) ? own : LIME_STATES.find((one) => at(one) !== null)
  const found = state && at(state)
  if (!state || !found) return undefined
  const { low, typical, high } = found
  const short = (value: number) => Number(value.toPrecision(4))
  return {
    state,
    aggregatePerLime: { low: short(low), typical: short(typical), high: short(high) },
  }
}
