import { CRYSTAL_DENSITY, WATER_PER_CAO, WATER_PER_MGO } from './constants.ts'

/** The four states in which lime is measured. */
export const LIME_STATES = ['lump-quicklime', 'ground-quicklime', 'dry-hydrate', 'putty'] as const
export type LimeState = (typeof LIME_STATES)[number]

/**
 * Dry hydrate from one kg of quicklime, kg/kg. Free lime takes up its water; all else stays as it was.
 *
 * @param freeCaO kg per kg of quicklime
 * @param hydratedMgO the part of the free MgO that hydrates too, kg per kg of quicklime; none on site
 */
export const hydratePerQuicklime = (freeCaO: number, hydratedMgO = 0): number =>
  1 + freeCaO * WATER_PER_CAO + hydratedMgO * WATER_PER_MGO

/**
 * Share of a putty's mass that is dry solids, from densities alone: no air in it.
 *
 * x = (1 − ρw/ρp) / (1 − ρw/ρs)
 *
 * @param puttyDensity kg/m³
 * @param solidDensity particle density of the solids, kg/m³
 */
export const puttySolids = (puttyDensity: number, solidDensity: number): number =>
  (1 - 1000 / puttyDensity) / (1 - 1000 / solidDensity)

/** Particle density of what a quicklime's hydrate is made of when no better figure is known, kg/m³. */
export const HYDRATE_SOLID_DENSITY = CRYSTAL_DENSITY.CaOH2

/**
 * kg of a lime in a state from one kg of its quicklime.
 *
 * @param hydratePer from {@link hydratePerQuicklime}
 * @param solids from {@link puttySolids}; needed for putty alone
 */
export function massPerQuicklime(state: LimeState, hydratePer: number, solids: number): number {
  if (state === 'lump-quicklime' || state === 'ground-quicklime') return 1
  return state === 'dry-hydrate' ? hydratePer : hydratePer / solids
}

/** Free water that stands in a lime, kg per kg of its quicklime; below zero what it will still bind. */
export function waterPerQuicklime(state: LimeState, hydratePer: number, solids: number): number {
  if (state === 'dry-hydrate') return 0
  return state === 'putty' ? hydratePer * (1 / solids - 1) : 1 - hydratePer
}
