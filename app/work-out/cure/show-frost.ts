import type { FrostWindow, NightRisk } from '#lib/mortar/frost.ts'
import type { Given } from '../../_ui/workshop/calculation.ts'
import type { Block, Figure } from '../../_ui/workshop/shown.ts'
import { words } from '../../_words/index.ts'
import { limitSource } from './fields.ts'

const RISKS = ['frost', 'near-frost', 'cold', 'none', 'unknown'] as const satisfies readonly NightRisk[]
const TONES = {
  shortest: 'hazard',
  typical: 'hazard',
  longest: 'caution',
  'not-known': 'caution',
  'no-protection': 'note',
} as const

/** What the nights threaten, night by night, and what to do about it. */
export function frostBlocks(frost: FrostWindow, given: Given): Block[] {
  const t = words('workOut')
  const limit = limitSource(given.chosen('limit'))
  const counts = RISKS.map(
    (risk): Figure => ({
      name: risk,
      label: t(`cure.risks.${risk}`),
      value: frost.counts[risk],
      unit: '1',
      ...(risk === 'cold' &&
        limit && { basis: limit.basis, ...('source' in limit && { source: limit.source }) }),
    }),
  )
  return [
    { kind: 'notice', tone: TONES[frost.frostWithin], text: t(`cure.within.${frost.frostWithin}`) },
    {
      kind: 'figures',
      name: 'counts',
      title: t('cure.results.counts'),
      figures: [
        ...(frost.firstFrostDay === null
          ? []
          : [{ name: 'first', label: t('cure.results.first'), value: frost.firstFrostDay, unit: 'd' }]),
        ...counts,
        { name: 'not-covered', label: t('cure.results.notCovered'), value: frost.daysNotCovered, unit: 'd' },
      ],
    },
    careTable(frost),
    {
      kind: 'note',
      text: t('cure.results.moreCare'),
      link: { href: '/guides/tending-and-weather', words: t('cure.results.guide') },
    },
    {
      kind: 'table',
      name: 'nights',
      title: t('cure.results.nights'),
      lead: t('cure.results.nightsLead'),
      columns: [
        { key: 'night', head: t('cure.results.night') },
        { key: 'low', head: t('cure.results.low') },
        { key: 'risk', head: t('cure.results.risk'), words: true },
      ],
      rows: frost.nights.map(({ day, lowC, risk }) => ({
        name: `${day}`,
        cells: {
          night: day === 0 ? t('cure.results.ofWork') : `${day}`,
          low: { value: lowC, unit: 'C' },
          risk: t(`cure.risks.${risk}`),
        },
      })),
    },
  ]
}

/** Care of new lime work, all of it common practice; what frost asks for only where there is some. */
function careTable({ counts }: FrostWindow): Block {
  const t = words('workOut')
  const icy = counts.frost + counts['near-frost'] > 0
  const rows = [
    'before',
    'week',
    'fortnight',
    ...(icy ? (['frost'] as const) : []),
    ...(counts.frost > 0 ? (['frozen'] as const) : []),
  ] as const
  return {
    kind: 'table',
    name: 'care',
    title: t('cure.results.careTitle'),
    stack: true,
    columns: [
      { key: 'when', head: t('cure.results.when') },
      { key: 'do', head: t('cure.results.do') },
    ],
    rows: rows.map((row) => ({
      name: row,
      cells: { when: t(`cure.care.${row}`), do: { words: t(`cure.care.${row}-do`), basis: 'practice' } },
    })),
  }
}
