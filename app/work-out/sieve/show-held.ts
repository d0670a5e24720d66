import { createElement } from 'react'
import type { LimitRow } from '#lib/mortar/sieve-limits.ts'
import type { Block, Figure } from '../../_ui/workshop/shown.ts'
import { formatList, formatNumber } from '../../_words/format.ts'
import { words } from '../../_words/index.ts'
import type { Held } from './calculation.ts'
import { type ChartCurve, GradingChart } from './chart.tsx'
import { LIMITS } from './choices.ts'
import { type Stack, sieveName } from './stacks.ts'

/** The name of a grading that the sums know. */
const gradingName = (id: string): string => {
  const known = LIMITS.find((one) => one === id)
  return known === undefined ? id : words('workOut')(`sieve.gradings.${known}`)
}

const rowName = ({ openingMm, fromMm }: LimitRow, stack: Stack): string =>
  fromMm === undefined
    ? sieveName(openingMm, stack)
    : words('workOut')('sieve.held.between', {
        from: sieveName(fromMm, stack),
        to: sieveName(openingMm, stack),
      })

/** The curves drawn on the limits, with the same in words. */
export function chartOf(
  openings: readonly number[],
  curves: readonly ChartCurve[],
  held: Held | undefined,
  stack: Stack,
): Block {
  const t = words('workOut')
  const [main] = curves
  const points = main?.curve ?? []
  const passes = points.map(({ openingMm, passing }) =>
    t('sieve.chart.point', {
      sieve: sieveName(openingMm, stack),
      share: formatNumber(passing.typical, 0),
    }),
  )
  const props = {
    title: t('sieve.chart.title'),
    openings,
    curves: curves.map(({ label, drawn, curve }) => ({
      label,
      drawn,
      curve: curve.map(({ openingMm, passing }) => ({ openingMm, passing })),
    })),
    ...(held && { band: { label: gradingName(held.limits.id), points: held.limits.passing } }),
  }
  return {
    kind: 'drawing',
    name: 'curve',
    title: t('sieve.chart.title'),
    says: [
      t('sieve.chart.says', { curve: main?.label ?? '', points: formatList(passes) }),
      ...(held ? [standingOf(held, stack)] : []),
    ].join(' '),
    draw: createElement(GradingChart, props),
    drawn: { of: 'grading', ...props },
  }
}

/** Where the curve leaves the limits, in a sentence. */
function standingOf({ limits, check }: Held, stack: Stack): string {
  const t = words('workOut')
  const grading = gradingName(limits.id)
  const outside = check.rows.filter(({ outcome }) => outcome === 'outside')
  if (outside.length > 0)
    return t('sieve.held.outside', {
      grading,
      sieves: formatList(outside.map((row) => rowName(row, stack))),
    })
  const open = check.rows.some(({ outcome }) => outcome !== 'within')
  return t(open ? 'sieve.held.open' : 'sieve.held.within', { grading })
}

/** Every rule of a grading with what was found, sieve by sieve. */
export function heldBlocks(held: Held | undefined, stack: Stack): Block[] {
  if (!held) return []
  const t = words('workOut')
  const { limits, check } = held
  const interpolated = check.rows.some((row) => row.interpolated)
  return [
    {
      kind: 'table',
      name: 'held',
      title: t('sieve.held.title', { grading: gradingName(limits.id) }),
      lead: interpolated ? t('sieve.held.interpolated') : standingOf(held, stack),
      stack: true,
      columns: [
        { key: 'sieve', head: t('sieve.results.sieve'), words: true },
        { key: 'least', head: t('sieve.held.least') },
        { key: 'most', head: t('sieve.held.most') },
        { key: 'found', head: t('sieve.held.found') },
        { key: 'standing', head: t('sieve.results.standing'), words: true },
      ],
      rows: check.rows.map((row) => ({
        name: row.fromMm === undefined ? `at-${row.openingMm}` : `from-${row.fromMm}-to-${row.openingMm}`,
        cells: {
          sieve: rowName(row, stack),
          least: { value: row.low, unit: '%' },
          most: { value: row.high, unit: '%' },
          found: { value: row.found, unit: '%' },
          standing: t(`sieve.outcome.${row.outcome}`),
        },
      })),
    },
  ]
}

/** How many of a grading's rules the curve keeps whatever the weighings were off by, with where they come from. */
export const keptFigure = (held: Held | undefined): Figure[] =>
  held
    ? [
        {
          name: 'kept',
          label: words('workOut')('sieve.held.kept', {
            grading: gradingName(held.limits.id),
            count: held.check.rows.length,
          }),
          value: held.check.rows.filter(({ outcome }) => outcome === 'within').length,
          unit: '1',
          basis: held.check.basis,
          source: held.check.source,
        },
      ]
    : []
