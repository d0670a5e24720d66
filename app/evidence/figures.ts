import type { EndPointFigures } from '#lib/api/evidence-figures.ts'
import { DAYS_PER_YEAR } from '#lib/evidence/index.ts'
import type { PlotCurve } from '../_ui/plot.ts'
import { quantityText } from '../_ui/quantity.tsx'
import { words } from '../_words/index.ts'

const t = words('evidence')

export const yearsOf = (days: number): number => days / DAYS_PER_YEAR

/** A share, or a difference of two, in whole per cent; where that would print a nought or all that is none, to a tenth. */
export function percent(share: number): string {
  const value = Math.abs(share) * 100
  const isEdge = (value > 99.5 && value < 100) || (value > 0 && value < 0.5)
  return quantityText(share * 100, '%', isEdge ? 1 : 0).main
}

/** One share, or two bounds where the data leave it open. */
export const shareText = ({ low, high }: { low: number; high: number }): string =>
  percent(low) === percent(high)
    ? percent(low)
    : t('curve.between', { low: percent(low), high: percent(high) })

export const bandText = ({ bandLow, bandHigh }: { bandLow: number; bandHigh: number }): string =>
  t('curve.between', { low: percent(bandLow), high: percent(bandHigh) })

/** The figures of one end point as a plot takes them; null where there is no curve. */
export function plotCurve(key: string, label: string, figures: EndPointFigures): PlotCurve | null {
  if (figures.curve === null) return null
  const endYears = yearsOf(figures.endDays)
  return {
    key,
    label,
    endYears,
    points: figures.curve.points.map(({ day, bandLow, bandHigh }) => ({
      years: yearsOf(day),
      bandLow,
      bandHigh,
    })),
    drops: figures.curve.turnbull.masses.map(({ from, to, mass }) => ({
      fromYears: yearsOf(from),
      toYears: to === null ? null : yearsOf(to),
      mass,
    })),
  }
}
