import { type Amount, readAmounts } from './amount.ts'
import { given, working } from './explain.ts'
import { attempt, MortarFault, type Outcome } from './fault.ts'
import type { Found } from './sand-bulking.ts'
import { spread } from './spread.ts'

const volume = { above: 0, max: 1e6, unit: 'mL' }
const density = { above: 0, max: 10_000, unit: 'kg/m3' }

/**
 * Voids of a sand by the water that fills them, % of its loose volume.
 *
 * @example voidsFromWater({ sandMl: 225, waterMl: 77 }) // 34.2 %
 */
export const voidsFromWater = (jar: { sandMl: Amount; waterMl: Amount }): Outcome<Found> =>
  attempt(() => {
    const v = readAmounts(jar, { sandMl: volume, waterMl: volume })
    refuseAsMuch('waterMl', v.waterMl.high, v.sandMl.low, 'mL')
    const { voids } = spread(v, (x) => ({ voids: (100 * x.waterMl) / x.sandMl }))
    return {
      value: voids,
      unit: '%',
      steps: [
        given('V_w', 'voidWater', v.waterMl, 'mL'),
        given('V_s', 'voidSand', v.sandMl, 'mL'),
        {
          ...given('v', 'voids', voids, '%'),
          formula: '100 · V_w / V_s',
          numbers: working`100 · ${v.waterMl.typical} / ${v.sandMl.typical}`,
        },
      ],
    }
  })

/** Voids of a sand by its densities, % of its loose volume. */
export const voidsFromDensities = (sand: { bulkKgM3: Amount; particleKgM3: Amount }): Outcome<Found> =>
  attempt(() => {
    const d = readAmounts(sand, { bulkKgM3: density, particleKgM3: density })
    refuseAsMuch('bulkKgM3', d.bulkKgM3.high, d.particleKgM3.low, 'kg/m3')
    const { voids } = spread(d, (x) => ({ voids: 100 * (1 - x.bulkKgM3 / x.particleKgM3) }))
    return {
      value: voids,
      unit: '%',
      steps: [
        given('ρ_b', 'property.bulkDensity', d.bulkKgM3, 'kg/m3'),
        given('ρ_s', 'property.particleDensity', d.particleKgM3, 'kg/m3'),
        {
          ...given('v', 'voids', voids, '%'),
          formula: '100 · (1 − ρ_b / ρ_s)',
          numbers: working`100 · (1 − ${d.bulkKgM3.typical} / ${d.particleKgM3.typical})`,
        },
      ],
    }
  })

/**
 * The leanest proportion whose paste still fills the sand's voids: dry sand to one of lime by volume.
 * A floor, not a target: what tradition used is shown beside it.
 *
 * @param lime voids of the dry loose sand, and the litres of paste (putty) that one litre of the lime
 *   makes in the state that is measured; 1 for putty
 */
export const leanestProportion = (lime: { voidsPercent: Amount; pasteL: Amount }): Outcome<Found> =>
  attempt(() => {
    const r = readAmounts(lime, {
      voidsPercent: { above: 0, max: 95, unit: '%' },
      pasteL: { above: 0, max: 10 },
    })
    const { sand } = spread(r, (x) => ({ sand: (100 * x.pasteL) / x.voidsPercent }))
    return {
      value: sand,
      unit: '1',
      steps: [
        given('v', 'voids', r.voidsPercent, '%'),
        given('p', 'pastePerLime', r.pasteL, '1'),
        {
          ...given('r', 'leanest', sand, '1'),
          formula: '100 · p / v',
          numbers: working`100 · ${r.pasteL.typical} / ${r.voidsPercent.typical}`,
        },
      ],
    }
  })

function refuseAsMuch(field: string, value: number, limit: number, unit: string): void {
  if (value >= limit) throw new MortarFault({ field, code: 'too-large', value, limit, exclusive: true, unit })
}
