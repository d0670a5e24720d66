import { digits, type Step } from './explain.ts'
import type { Grading } from './sieve.ts'

/** The working of a grading: passing by sieve, moduli, sizes and coefficients. */
export function explainGrading(grading: Omit<Grading, 'steps'>): Step[] {
  const steps: Step[] = grading.rows.map((row) => ({
    symbol: `P(${digits(row.openingMm)})`,
    means: 'analysis.sievePassing',
    formula: '100 − Σ m / m_total · 100',
    numbers: `100 − ${digits(row.cumulative.typical)}`,
    result: row.passing,
    unit: '%',
  }))
  for (const { set, value } of grading.finenessModuli)
    steps.push({
      symbol: 'FM',
      means: `analysis.sieveFineness.${set}`,
      formula: 'Σ R / 100',
      numbers: `${digits(value.typical * 100)} / 100`,
      result: value,
      unit: '1',
    })
  const { d10, d30, d60, uniformity, curvature } = grading
  for (const [symbol, size] of [['D10', d10] as const, ['D30', d30] as const, ['D60', d60] as const])
    if (size.kind === 'size')
      steps.push({
        symbol,
        means: 'analysis.sieveSize',
        formula: 'log-linear between sieves',
        numbers: digits(size.mm.typical),
        result: size.mm,
        unit: 'mm',
      })
  if (d10.kind !== 'size' || d60.kind !== 'size') return steps
  if (uniformity !== null)
    steps.push({
      symbol: 'Cu',
      means: 'analysis.sieveUniformity',
      formula: 'D60 / D10',
      numbers: `${digits(d60.mm.typical)} / ${digits(d10.mm.typical)}`,
      result: uniformity,
      unit: '1',
    })
  if (curvature !== null && d30.kind === 'size')
    steps.push({
      symbol: 'Cc',
      means: 'analysis.sieveCurvature',
      formula: 'D30² / (D60 · D10)',
      numbers: `${digits(d30.mm.typical)}² / (${digits(d60.mm.typical)} · ${digits(d10.mm.typical)})`,
      result: curvature,
      unit: '1',
    })
  return steps
}
