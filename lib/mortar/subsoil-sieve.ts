import { type Step, working } from './explain.ts'
import { attempt, type Outcome } from './fault.ts'
import { inspect } from './inspect.ts'
import type { Range } from './range.ts'
import { spread } from './spread.ts'
import type { SoilShare } from './subsoil.ts'

export interface WetSieveInput {
  /** Dry mass before washing. */
  readonly dryG: number
  /** Dry mass kept on 2 mm and on 63 µm after washing. */
  readonly gravelG: number
  readonly sandG: number
  readonly balanceG?: number | undefined
}

/**
 * Gravel, sand and fines (silt and clay together, below 63 µm) from a soil washed through two sieves.
 * Only settling can part the fines.
 *
 * @returns faults: nothing weighed, negative masses, more kept than was there
 */
export function readWetSieve(
  input: WetSieveInput,
): Outcome<{ readonly shares: readonly SoilShare[]; readonly steps: readonly Step[] }> {
  return attempt(() => {
    const check = inspect()
    check.number('dryG', input.dryG, { above: 0, unit: 'g' })
    check.number('gravelG', input.gravelG, { min: 0, unit: 'g' })
    check.number('sandG', input.sandG, { min: 0, unit: 'g' })
    check.number('balanceG', input.balanceG ?? 0, { min: 0, max: input.dryG / 10, unit: 'g' })
    check.finish()
    const kept = input.gravelG + input.sandG
    if (kept > input.dryG)
      check.refuse({ field: 'sandG', code: 'too-large', value: kept, limit: input.dryG, unit: 'g' })
    check.finish()
    const error = input.balanceG ?? 0
    const around = (massG: number): Range => ({
      low: Math.max(0, massG - error),
      typical: massG,
      high: massG + error,
    })
    const found = spread(
      { dry: around(input.dryG), gravel: around(input.gravelG), sand: around(input.sandG) },
      (x) => ({
        gravel: (100 * x.gravel) / x.dry,
        sand: (100 * x.sand) / x.dry,
        fines: Math.max(0, 100 - (100 * (x.gravel + x.sand)) / x.dry),
      }),
    )
    const shares = (['gravel', 'sand', 'fines'] as const).map((part) => ({ part, percent: found[part] }))
    const steps = shares.map(({ part, percent }) => ({
      symbol: `w_${part}`,
      means: `analysis.soilShare.${part}`,
      formula: part === 'fines' ? '100 − w_gravel − w_sand' : '100 · m / m_dry',
      numbers:
        part === 'fines'
          ? working`100 − ${found.gravel.typical} − ${found.sand.typical}`
          : working`100 · ${part === 'gravel' ? input.gravelG : input.sandG} / ${input.dryG}`,
      result: percent,
      unit: '%',
    }))
    return { shares, steps }
  })
}
