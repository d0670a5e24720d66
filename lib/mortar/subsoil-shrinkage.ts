import { type Step, working } from './explain.ts'
import { attempt, type Outcome } from './fault.ts'
import { inspect } from './inspect.ts'
import { exactly, type Range } from './range.ts'
import { spread } from './spread.ts'

export interface ShrinkageInput {
  /** Inside length of the box. */
  readonly boxMm: number
  /** One bar for each mix tried, leanest addition first. */
  readonly bars: readonly {
    /** Volume of sand or soil added to one of the soil. */
    readonly additionPerSoil: number
    /** Gap at the ends and all cracks, pushed together, mm. */
    readonly gapMm: number
  }[]
  readonly markMm: number
  /** The most shrinkage that the work allows, %; for the addition that just meets it. */
  readonly allowedPercent?: number | undefined
}

export interface Shrinkage {
  readonly bars: readonly { readonly additionPerSoil: number; readonly percent: Range }[]
  /** Least addition that meets the allowed shrinkage, read between two bars; null if none was asked or found. */
  readonly leastAddition: number | null
  readonly steps: readonly Step[]
}

/**
 * Shrinkage of soil bars in a box, before and after an addition.
 *
 * @returns faults: no box or bar, a gap longer than the box, additions out of order
 */
export function readShrinkage(input: ShrinkageInput): Outcome<Shrinkage> {
  return attempt(() => {
    const check = inspect()
    check.number('boxMm', input.boxMm, { above: 0, max: 5000, unit: 'mm' })
    check.number('markMm', input.markMm, { min: 0, max: input.boxMm / 20, unit: 'mm' })
    check.number('allowedPercent', input.allowedPercent ?? 0, { min: 0, max: 100, unit: '%' })
    if (input.bars.length === 0) check.refuse({ field: 'bars', code: 'empty' })
    input.bars.forEach((bar, i) => {
      const before = input.bars[i - 1]?.additionPerSoil
      check.number(`bars.${i}.additionPerSoil`, bar.additionPerSoil, { min: 0, max: 100 })
      check.number(`bars.${i}.gapMm`, bar.gapMm, { min: 0, max: input.boxMm / 2, unit: 'mm' })
      if (before !== undefined && bar.additionPerSoil <= before)
        check.refuse({
          field: `bars.${i}.additionPerSoil`,
          code: 'out-of-order',
          value: bar.additionPerSoil,
          limit: before,
        })
    })
    check.finish()
    const gaps: Record<string, Range> = {}
    input.bars.forEach(({ gapMm }, i) => {
      gaps[`gap.${i}`] = {
        low: Math.max(0, gapMm - input.markMm),
        typical: gapMm,
        high: gapMm + input.markMm,
      }
    })
    const found = spread(gaps, (x) =>
      Object.fromEntries(Object.entries(x).map(([name, gap]) => [name, (100 * gap) / input.boxMm])),
    )
    const bars = input.bars.map(({ additionPerSoil }, i) => ({
      additionPerSoil,
      percent: found[`gap.${i}`] ?? exactly(0),
    }))
    const steps = bars.map(({ percent, additionPerSoil }, i) => ({
      symbol: `s(${additionPerSoil})`,
      means: 'analysis.soilShrinkage',
      formula: 'gap / box · 100',
      numbers: working`${input.bars[i]?.gapMm ?? 0} / ${input.boxMm} · 100`,
      result: percent,
      unit: '%',
      source: 'is-2720-20',
    }))
    return { bars, leastAddition: least(bars, input.allowedPercent), steps }
  })
}

function least(bars: Shrinkage['bars'], allowed: number | undefined): number | null {
  if (allowed === undefined) return null
  const index = bars.findIndex((bar) => bar.percent.typical <= allowed)
  const met = bars[index]
  const before = bars[index - 1]
  if (met === undefined) return null
  if (before === undefined) return met.additionPerSoil
  const part = (before.percent.typical - allowed) / (before.percent.typical - met.percent.typical)
  return before.additionPerSoil + part * (met.additionPerSoil - before.additionPerSoil)
}
