import type { Grading } from '#lib/mortar/sieve.ts'
import { withUnit } from '../../_ui/quantity.tsx'
import type { Block, Figure } from '../../_ui/workshop/shown.ts'
import { formatNumber } from '../../_words/format.ts'
import { words } from '../../_words/index.ts'

/** Do the weighings add up? Only where the sand was weighed before it was sieved. */
export function weighedBlocks({ totalG, lossPercent, lossChecks }: Grading): Block[] {
  const t = words('workOut')
  const total: Figure = {
    name: 'total',
    label: t('sieve.loss.total'),
    value: Number(totalG.toPrecision(6)),
    unit: 'g',
    bench: true,
  }
  if (lossPercent === null)
    return [
      {
        kind: 'figures',
        name: 'weighed',
        title: t('sieve.loss.title'),
        figures: [{ ...total, note: t('sieve.loss.notWeighed') }],
      },
    ]
  const over = lossChecks.some(({ outcome }) => outcome === 'over')
  return [
    {
      kind: 'figures',
      name: 'weighed',
      title: t('sieve.loss.title'),
      figures: [
        total,
        {
          name: 'loss',
          label: t(lossPercent < 0 ? 'sieve.loss.gained' : 'sieve.loss.lost'),
          value: Number(Math.abs(lossPercent).toFixed(2)),
          unit: '%',
        },
        ...lossChecks.map(
          ({ id, limitPercent, outcome, basis, source }): Figure => ({
            name: `most-${id}`,
            label: t(`sieve.lossLimits.${LOSS_WORDS[id] ?? 'astm-c136'}`),
            value: limitPercent,
            unit: '%',
            note: t(`sieve.lossOutcome.${outcome}`),
            basis,
            ...(source !== null && { source }),
          }),
        ),
      ],
    },
    ...(over
      ? [
          {
            kind: 'notice' as const,
            tone: 'caution' as const,
            text: t('sieve.loss.over', { share: withUnit(formatNumber(Math.abs(lossPercent), 1), '%') }),
          },
        ]
      : []),
  ]
}

const LOSS_WORDS: Readonly<Record<string, 'astm-c136' | 'en-933-1'>> = {
  'astm-c136': 'astm-c136',
  'en-933-1': 'en-933-1',
}
