import { LIME_STATES, type LimeState } from '#lib/mortar/lime.ts'
import type { Proportions, StateProportions } from '#lib/mortar/proportions.ts'
import type { MortarYield } from '#lib/mortar/yield.ts'

export type PartKind = 'lime' | 'filler' | 'other' | 'solids' | 'water' | 'air'

/** One part of a line, in measures of the dry filler. */
export interface MixPart {
  readonly kind: PartKind
  /** Material, for a filler and what is else in it. */
  readonly material?: string
  readonly amount: number
}

/** The mix measured with its lime in one state, or as the mortar that it makes. */
export interface MixLine {
  readonly state: LimeState | 'mortar'
  readonly when: 'before' | 'after' | 'mixed'
  readonly parts: readonly MixPart[]
}

/** Roles by place in the recipe; what has no volume of its own in the heap is left out. */
type Roles = readonly { readonly role: string }[]
const UNDRAWN = ['water', 'fibre', 'additive', 'lime']

/**
 * A mix to one measure of its dry aggregate and earth, line by line: its lime in each state that is known, then
 * the mortar where its yield is. The typical figures alone: ranges belong into the table beside it.
 *
 * @returns nothing for a mix without lime, without filler, or with quantities that its source leaves out
 */
export function compositionOf(
  { states }: Pick<Proportions, 'states'>,
  ingredients: Roles,
  yields?: Pick<MortarYield, 'mortarL' | 'solidL' | 'freeWaterL' | 'perFiller'>,
): MixLine[] {
  const lines = LIME_STATES.flatMap((state) => lineOf(states[state], ingredients) ?? [])
  if (lines.length === 0 || !yields?.perFiller) return lines
  const all = yields.perFiller.typical
  const part = (litres: number) => (all * litres) / yields.mortarL.typical
  const [solids, water] = [part(yields.solidL.typical), part(yields.freeWaterL.typical)]
  const air = all - solids - water
  return [
    ...lines,
    {
      state: 'mortar',
      when: 'mixed',
      parts: [
        { kind: 'solids', amount: solids },
        { kind: 'water', amount: water },
        ...(air > all / 1000 ? [{ kind: 'air', amount: air } as const] : []),
      ],
    },
  ]
}

function lineOf(found: StateProportions | null, ingredients: Roles): MixLine | undefined {
  const fill = found?.aggregateDry?.typical
  if (!found || fill === undefined || fill <= 0) return undefined
  const drawn = found.parts.filter(({ index }) => !UNDRAWN.includes(ingredients[index]?.role ?? ''))
  const isFiller = (index: number) => ['aggregate', 'earth'].includes(ingredients[index]?.role ?? '')
  return {
    state: found.state,
    when: found.state === 'dry-hydrate' || found.state === 'putty' ? 'after' : 'before',
    parts: [
      { kind: 'lime', amount: 1 / fill },
      ...drawn.map(({ index, material, dry }): MixPart => {
        return { kind: isFiller(index) ? 'filler' : 'other', material, amount: dry.typical / fill }
      }),
    ],
  }
}
