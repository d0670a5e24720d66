import type { Cure } from '#lib/mortar/cure.ts'
import { type Range, scale } from '#lib/mortar/range.ts'
import { quantityText } from '../../_ui/quantity.tsx'
import type { Given } from '../../_ui/workshop/calculation.ts'
import type { Block, Shown } from '../../_ui/workshop/shown.ts'
import { words } from '../../_words/index.ts'
import type { CureFound } from './calculation.ts'
import { frostBlocks } from './show-frost.ts'

const DAYS_A_YEAR = 365.25

/** What becomes of the work. */
export function show(found: CureFound, given: Given): Shown {
  const t = words('workOut')
  if (found.what === 'depth')
    return { blocks: depthBlocks(found.cure, found.k, found.measured), steps: found.steps }
  if (found.what === 'frost') return { blocks: frostBlocks(found.frost, given), steps: [] }
  const { waterKgM2, days, steps } = found.drying
  return {
    steps,
    blocks: [
      {
        kind: 'figures',
        name: 'drying',
        title: t('cure.results.earthTitle'),
        figures: [
          { name: 'days', label: t('cure.results.days'), value: days, unit: 'd' },
          { name: 'water', label: t('cure.results.water'), value: waterKgM2, unit: 'kg/m2' },
        ],
      },
      { kind: 'notice', tone: 'caution', text: t('cure.results.earthNote') },
    ],
  }
}

function depthBlocks({ depths, fullDays }: Cure, k: Range, measured: boolean): Block[] {
  const t = words('workOut')
  return [
    {
      kind: 'figures',
      name: 'full',
      title: t('cure.results.fullTitle'),
      figures: [
        { name: 'days', label: t('cure.results.fullDays'), value: fullDays, unit: 'd' },
        {
          name: 'years',
          label: t('cure.results.fullYears'),
          value: scale(fullDays, 1 / DAYS_A_YEAR),
          unit: 'year',
        },
        ...(measured ? [{ name: 'k', label: t('cure.results.k'), value: k, unit: 'mm/d^0.5' }] : []),
      ],
    },
    {
      kind: 'table',
      name: 'depths',
      title: t('cure.results.depths'),
      stack: true,
      bars: 'depth',
      columns: [
        { key: 'age', head: t('cure.results.age') },
        { key: 'depth', head: t('cure.results.depth') },
        { key: 'share', head: t('cure.results.share') },
      ],
      rows: depths.map(({ days, mm, share }, place) => ({
        name: `${place + 1}`,
        cells: {
          age: quantityText(days, 'd').main,
          depth: { value: mm, unit: 'mm' },
          share: { value: scale(share, 100), unit: '%' },
        },
      })),
    },
    { kind: 'notice', tone: 'note', text: t('cure.results.law') },
  ]
}
