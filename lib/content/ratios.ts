import { LIME_STATES, type LimeState } from '#lib/entry/terms.ts'
import { proportions } from '#lib/mortar/proportions.ts'
import type { Range } from '#lib/mortar/range.ts'
import { SUMS_VERSION } from '#lib/mortar/version.ts'
import type { Content, TableRow } from './types.ts'

/** Dry, loose aggregate and earth to one of lime by volume, for each lime state; null where it can't be told. */
export type RowRatios = Readonly<Record<LimeState, Range | null>>

/** The ratios of every row, and what they were worked out from. */
export interface RatioFile {
  readonly edition: string
  readonly sums: number
  readonly ratios: Readonly<Record<string, RowRatios>>
}

const AGGREGATES: readonly string[] = ['aggregate', 'earth']

/** A row's ratios from the materials' figures; null where it has no lime, no aggregate, or lacks a figure. */
export function rowRatios(row: TableRow, materials: Content['materials']): RowRatios | null {
  const has = (roles: readonly string[]) => row.ingredients.some(({ role }) => roles.includes(role))
  if (!has(['lime']) || !has(AGGREGATES)) return null
  const named = row.ingredients.flatMap(({ material }) => materials.get(material) ?? [])
  const outcome = proportions({
    ingredients: row.ingredients,
    materials: Object.fromEntries(named.map(({ id, properties }) => [id, properties])),
  })
  if (!outcome.ok) return null
  const ratios = Object.fromEntries(
    LIME_STATES.map((state) => [state, outcome.value.states[state]?.aggregateDry ?? null]),
  ) as Record<LimeState, Range | null>
  return LIME_STATES.some((state) => ratios[state] !== null) ? ratios : null
}

/**
 * Works out every row that can be. Some seconds of sums, so others get their turn between rows.
 *
 * @param pause awaited after each row
 */
export async function workOutRatios(content: Content, pause: () => Promise<void>): Promise<RatioFile> {
  const ratios: Record<string, RowRatios> = {}
  for (const row of content.rows.values()) {
    const found = rowRatios(row, content.materials)
    if (found) ratios[row.ref] = found
    await pause()
  }
  return { edition: content.edition, sums: SUMS_VERSION, ratios }
}

/** Do these ratios come from this content and these sums? */
export const isCurrent = (file: Pick<RatioFile, 'edition' | 'sums'>, content: Content): boolean =>
  file.edition === content.edition && file.sums === SUMS_VERSION
