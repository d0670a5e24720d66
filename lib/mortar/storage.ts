import { setsUnderWater } from './hydraulic-limes.ts'
import type { IngredientRole, Materials } from './ingredient.ts'
import type { LimeState } from './lime.ts'
import { exactly, type Range } from './range.ts'

export const KEEPING_IDS = [
  'sealed-and-dry',
  'bags-off-ground',
  'putty-under-water',
  'putty-used-soon',
  'heap-covered',
  'dry-and-clean',
  'tightly-closed',
] as const

/** How a material is kept on site, and for how long where that is known. */
export interface Keeping {
  readonly material: string
  readonly id: (typeof KEEPING_IDS)[number]
  readonly days: Range | null
}

const BY_ROLE: Partial<Record<IngredientRole, Keeping['id']>> = {
  aggregate: 'heap-covered',
  earth: 'heap-covered',
  fibre: 'dry-and-clean',
  pozzolan: 'bags-off-ground',
  cement: 'bags-off-ground',
  gypsum: 'bags-off-ground',
  pigment: 'dry-and-clean',
  additive: 'tightly-closed',
}

/**
 * How an ingredient is kept. A shelf life is that of the material as sold dry, so none is given for
 * putty, which keeps as long as water covers it, or for heaps.
 */
export function keep(
  material: string,
  role: IngredientRole,
  state: LimeState | 'dry' | 'damp',
  materials: Materials,
): Keeping[] {
  const id = role === 'lime' ? keepLime(material, state) : BY_ROLE[role]
  if (id === undefined) return []
  const life =
    id === 'putty-under-water' || id === 'putty-used-soon' || id === 'heap-covered'
      ? undefined
      : materials[material]?.shelfLife
  const days = life === undefined ? null : { ...exactly(life.typical), low: life.low, high: life.high }
  return [{ material, id, days }]
}

function keepLime(material: string, state: LimeState | 'dry' | 'damp'): Keeping['id'] {
  if (state === 'putty') return setsUnderWater(material) ? 'putty-used-soon' : 'putty-under-water'
  return state === 'dry-hydrate' ? 'bags-off-ground' : 'sealed-and-dry'
}
