import { BOILING_C, HEAT_CAPACITY, SLAKING_HEAT_CAO, VAPORISATION_HEAT, WATER_PER_CAO } from './constants.ts'

/** What lies in the heap when quicklime meets water. */
export interface SlakingHeap {
  readonly quicklimeKg: number
  /** kg per kg of quicklime. */
  readonly freeCaO: number
  /** All water in the heap, the sand's moisture too. */
  readonly waterKg: number
  readonly sandKg: number
  /** Of the dry sand, kJ/(kg·K). */
  readonly sandHeat: number
  readonly waterC: number
  /** Of sand and lime. */
  readonly sandC: number
  /** How much of the free lime has slaked so far; all of it when left out. */
  readonly slakedShare?: number
}

/** The heap afterwards, as if it were mixed evenly and lost no heat. Dry spots run far hotter. */
export interface SlakedHeap {
  readonly heatKJ: number
  /** Heat capacity of all that is in the heap once slaked, kJ/K. */
  readonly capacityKJK: number
  /** Average temperature before slaking. */
  readonly startC: number
  readonly averageC: number
  readonly boiledKg: number
  /** Free water that is left. */
  readonly freeKg: number
}

/**
 * Energy balance of slaking: the heat warms hydrate, sand and free water; what would carry them past
 * boiling turns water to steam; where all water is gone the dry heap gets hotter still.
 *
 * Water that is too little to bind all the lime slakes a part of it only. Magnesia is taken as inert.
 * The capacities are those of the products at 25 °C, and steam carries off no sensible heat: first order.
 */
export function slakeHeap(heap: SlakingHeap): SlakedHeap {
  const caoKg = heap.quicklimeKg * heap.freeCaO
  const slakedKg = Math.min(caoKg * (heap.slakedShare ?? 1), heap.waterKg / WATER_PER_CAO)
  const boundKg = slakedKg * WATER_PER_CAO
  const heatKJ = slakedKg * SLAKING_HEAT_CAO
  const freeKg = heap.waterKg - boundKg
  const dryHeat =
    (slakedKg + boundKg) * HEAT_CAPACITY.CaOH2 +
    (caoKg - slakedKg) * HEAT_CAPACITY.CaO +
    (heap.quicklimeKg - caoKg) * HEAT_CAPACITY.CaCO3 +
    heap.sandKg * heap.sandHeat
  const waterHeat = freeKg * HEAT_CAPACITY.water
  const capacity = dryHeat + waterHeat
  const startC = capacity > 0 ? (dryHeat * heap.sandC + waterHeat * heap.waterC) / capacity : heap.sandC
  const reachedC = capacity > 0 ? startC + heatKJ / capacity : startC
  const isBoiling = reachedC > BOILING_C
  const surplusKJ = isBoiling ? heatKJ - capacity * (BOILING_C - startC) : 0
  const boiledKg = isBoiling ? Math.min(freeKg, surplusKJ / VAPORISATION_HEAT) : 0
  const leftKJ = Math.max(0, surplusKJ - boiledKg * VAPORISATION_HEAT)
  // Written out whole: an object spread here takes ten times as long as the sum, and it is summed for every draw.
  return {
    heatKJ,
    capacityKJK: capacity,
    startC,
    averageC: isBoiling ? BOILING_C + leftKJ / dryHeat : reachedC,
    boiledKg,
    freeKg: freeKg - boiledKg,
  }
}
