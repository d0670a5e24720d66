import type { CarbonInput, CarbonSheet } from './carbon.ts'
import { CO2_PER_CAO, CO2_PER_MGO, DAYS_PER_YEAR } from './carbon-sum.ts'
import { type Step, working } from './explain.ts'
import type { Range } from './range.ts'

const PROCESS = 'ipcc-2006-v3, ch. 2, table 2.4'

const sumOf = (terms: readonly string[]): string => (terms.length === 0 ? '0' : terms.join(' + '))

/** The working of a count of carbon, line by line. */
export function explainCarbon(
  input: CarbonInput,
  parts: Readonly<Record<'calcination' | 'fuel' | 'others' | 'transport' | 'released', Range>>,
  { uptake, inTheEnd, perM3 }: Pick<CarbonSheet, 'uptake' | 'inTheEnd' | 'perM3'>,
): Step[] {
  const { calcination, fuel, others, transport, released } = parts
  const kg = 'kg'
  const { limes } = input
  const fromCaO = limes.reduce((sum, one) => sum + one.massKg.typical * one.caoShare.typical * CO2_PER_CAO, 0)
  return [
    {
      symbol: 'C_c',
      means: 'analysis.carbonCalcination',
      formula: 'Σ m · (CaO · 44.009/56.077 + MgO · 44.009/40.304) · (1 + dust)',
      numbers: sumOf(
        limes.map(
          ({ massKg, caoShare, mgoShare, kilnDustShare }) =>
            working`${massKg.typical} · (${caoShare.typical} · ${CO2_PER_CAO} + ${mgoShare.typical} · ${CO2_PER_MGO}) · (1 + ${kilnDustShare?.typical ?? 0})`,
        ),
      ),
      result: calcination,
      unit: kg,
      source: PROCESS,
    },
    {
      symbol: 'C_f',
      means: 'analysis.carbonFuel',
      formula: 'Σ m · e_fuel',
      numbers: sumOf(limes.map((one) => working`${one.massKg.typical} · ${one.fuelKgPerKg.typical}`)),
      result: fuel,
      unit: kg,
    },
    {
      symbol: 'C_o',
      means: 'analysis.carbonOthers',
      formula: 'Σ m · e_gate',
      numbers: sumOf(input.others.map((one) => working`${one.massKg.typical} · ${one.gateKgPerKg.typical}`)),
      result: others,
      unit: kg,
    },
    {
      symbol: 'C_t',
      means: 'analysis.carbonTransport',
      formula: 'Σ m / 1000 · km · e_t',
      numbers: sumOf(
        [...limes, ...input.others].map(
          (one) =>
            working`${one.massKg.typical} / 1000 · ${one.distanceKm.typical} · ${input.transportKgPerTkm.typical}`,
        ),
      ),
      result: transport,
      unit: kg,
    },
    {
      symbol: 'C',
      means: 'analysis.carbonReleased',
      formula: 'C_c + C_f + C_o + C_t',
      numbers: working`${calcination.typical} + ${fuel.typical} + ${others.typical} + ${transport.typical}`,
      result: released,
      unit: kg,
    },
    {
      symbol: 'C/V',
      means: 'analysis.carbonPerM3',
      formula: '1000 · C / V',
      numbers: working`1000 · ${released.typical} / ${input.mortarL.typical}`,
      result: perM3,
      unit: 'kg/m3',
    },
    {
      symbol: 'U',
      means: 'analysis.carbonEnd',
      formula: 'Σ m · CaO · 44.009/56.077 · share',
      numbers: working`${fromCaO} · ${input.uptakeShare.typical}`,
      result: inTheEnd.takenKg,
      unit: kg,
      source: 'grosso-campo-2022',
    },
    ...uptake.map(({ years, takenKg }) => ({
      symbol: `U(${years})`,
      means: 'analysis.carbonUptake',
      formula: 'Σ m · CaO · 44.009/56.077 · share · min(1, k √t / d)',
      numbers: working`${fromCaO} · ${input.uptakeShare.typical} · min(1, ${input.kMmPerRootDay.typical * Math.sqrt(years * DAYS_PER_YEAR)} / ${input.depthMm.typical})`,
      result: takenKg,
      unit: kg,
      source: 'grosso-campo-2022',
    })),
  ]
}
