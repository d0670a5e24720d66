import { exactly, scale } from '#lib/mortar/range.ts'
import type { Given } from '../../_ui/workshop/calculation.ts'
import type { Shown } from '../../_ui/workshop/shown.ts'
import { formatList } from '../../_words/format.ts'
import { words } from '../../_words/index.ts'
import type { SieveFound } from './calculation.ts'
import { chartOf, heldBlocks, keptFigure } from './show-held.ts'
import { NAMED_STACKS, openingsOf, sieveName } from './stacks.ts'

/** Shares of the sands, how near their blend comes to the target, and the curves. */
export function showBlend(
  { blend, sands, target, held, unreached }: Extract<SieveFound, { what: 'blend' }>,
  given: Given,
): Shown {
  const t = words('workOut')
  const stack = given.choice('stack', NAMED_STACKS)
  const named = (s: number) => t('sieve.sandNumber', { number: String(s + 1) })
  const mixed = blend.rows.map(({ openingMm, passing }) => ({ openingMm, passing }))
  return {
    steps: blend.steps,
    blocks: [
      {
        kind: 'table',
        name: 'sands',
        title: t('sieve.blend.title'),
        lead: t('sieve.blend.lead'),
        columns: [
          { key: 'sand', head: t('sieve.blend.sand') },
          { key: 'mass', head: t('sieve.blend.mass') },
          { key: 'volume', head: t('sieve.blend.volume') },
        ],
        stack: true,
        bars: 'volume',
        rows: blend.shares.map((share, s) => ({
          name: `sand-${s + 1}`,
          cells: {
            sand: named(s),
            mass: { value: scale(share, 100), unit: '%' },
            volume: { value: scaled(blend.volumeShares?.[s]), unit: '%' },
          },
        })),
      },
      {
        kind: 'figures',
        name: 'fit',
        title: t('sieve.blend.fit'),
        figures: [
          {
            name: 'residual',
            label: t('sieve.blend.residual'),
            value: blend.residual,
            unit: '%',
            note: t('sieve.blend.residualNote'),
          },
          ...keptFigure(held),
        ],
      },
      chartOf(
        openingsOf(stack),
        [
          { label: t('sieve.chart.blend'), curve: mixed, drawn: 'main' },
          {
            label: t('sieve.chart.target'),
            curve: target.map((point) => ({ ...point, passing: exactly(point.passing) })),
            drawn: 'target',
          },
          ...sands.map((curve, s) => ({ label: named(s), curve, drawn: 'part' as const })),
        ],
        held,
        stack,
      ),
      {
        kind: 'table',
        name: 'blend',
        title: t('sieve.blend.rows'),
        columns: [
          { key: 'sieve', head: t('sieve.results.sieve') },
          { key: 'target', head: t('sieve.chart.target') },
          { key: 'passing', head: t('sieve.chart.blend') },
          { key: 'residual', head: t('sieve.blend.off') },
        ],
        rows: blend.rows.map((row) => ({
          name: `at-${row.openingMm}`,
          cells: {
            sieve: sieveName(row.openingMm, stack),
            target: { value: row.target, unit: '%' },
            passing: { value: row.passing, unit: '%' },
            residual: { value: Number(row.residual.toFixed(1)), unit: '%' },
          },
        })),
      },
      ...heldBlocks(held, stack),
      ...(unreached.length === 0
        ? []
        : [
            {
              kind: 'note' as const,
              text: t('sieve.blend.unreached', {
                sieves: formatList(unreached.map((mm) => sieveName(mm, stack))),
              }),
            },
          ]),
      { kind: 'notice', tone: 'note', text: t('sieve.blend.trial') },
    ],
  }
}

const scaled = (share: Parameters<typeof scale>[0] | undefined) => (share ? scale(share, 100) : null)
