import { withUnit } from '../../_ui/quantity.tsx'
import { type BenchData, termLabel } from '../../_ui/workshop/brought.ts'
import type { Given } from '../../_ui/workshop/calculation.ts'
import type { Block, Shown } from '../../_ui/workshop/shown.ts'
import { formatNumber } from '../../_words/format.ts'
import { words } from '../../_words/index.ts'
import type { SoilFound } from './calculation.ts'

type Of<W extends SoilFound['what']> = Extract<SoilFound, { what: W }>['found']

/** What to add to one of the soil, by box and by scale. */
export function showAmendment(found: Of<'amend'>, given: Given, data: BenchData): Shown {
  const t = words('workOut')
  const addition = data.materials[given.chosen('addition')]?.label ?? ''
  return {
    steps: found.steps,
    blocks: [
      {
        kind: 'figures',
        name: 'addition',
        title: t('subsoil.amend.title'),
        lead: t('subsoil.amend.lead', { addition }),
        figures: [
          {
            name: 'by-volume',
            label: t('subsoil.amend.byVolume'),
            value: found.perSoilByVolume,
            unit: '1',
            as: 'ratio',
          },
          {
            name: 'by-mass',
            label: t('subsoil.amend.byMass'),
            value: found.perSoilByMass,
            unit: '1',
            as: 'ratio',
          },
        ],
      },
      { kind: 'notice', tone: 'note', text: t('subsoil.amend.trial') },
    ],
  }
}

/** Shrinkage of every bar, and the least addition that keeps within what is allowed. */
export function showShrinkage({ bars, leastAddition, steps }: Of<'shrinkage'>, allowed?: number): Shown {
  const t = words('workOut')
  const least: Block[] =
    allowed === undefined
      ? []
      : [
          {
            kind: 'figures',
            name: 'least',
            title: t('subsoil.shrinkage.least'),
            figures: [
              {
                name: 'addition',
                label: t('subsoil.shrinkage.leastLabel', {
                  allowed: withUnit(formatNumber(allowed), '%'),
                }),
                value: leastAddition === null ? null : Number(leastAddition.toPrecision(3)),
                unit: '1',
                as: 'ratio',
                note: t(leastAddition === null ? 'subsoil.shrinkage.none' : 'subsoil.shrinkage.read'),
              },
            ],
          },
        ]
  return {
    steps,
    blocks: [
      ...least,
      {
        kind: 'table',
        name: 'bars',
        title: t('subsoil.shrinkage.title'),
        columns: [
          { key: 'mix', head: t('subsoil.shrinkage.mix') },
          { key: 'percent', head: t('subsoil.shrinkage.percent') },
        ],
        bars: 'percent',
        rows: bars.map(({ additionPerSoil, percent }) => ({
          name: `with-${additionPerSoil}`,
          cells: {
            mix: { value: additionPerSoil, unit: '1', as: 'ratio' },
            percent: { value: percent, unit: '%' },
          },
        })),
      },
      { kind: 'note', text: t('subsoil.shrinkage.note') },
    ],
  }
}

/** The same dose of lime in every state, with fibre. */
export function showLime({ soilKg, states, fibreKg, fibreL, steps }: Of<'lime'>, data: BenchData): Shown {
  const t = words('workOut')
  const fibre: Block[] = fibreKg
    ? [
        {
          kind: 'figures',
          name: 'fibre',
          title: t('subsoil.lime.fibre'),
          figures: [
            { name: 'mass', label: t('subsoil.lime.mass'), value: fibreKg, unit: 'kg' },
            { name: 'volume', label: t('subsoil.lime.looseVolume'), value: fibreL, unit: 'L' },
          ],
        },
      ]
    : []
  return {
    steps,
    blocks: [
      {
        kind: 'figures',
        name: 'soil',
        title: t('subsoil.lime.soil'),
        figures: [{ name: 'mass', label: t('subsoil.lime.soilMass'), value: soilKg, unit: 'kg' }],
      },
      {
        kind: 'table',
        name: 'states',
        title: t('subsoil.lime.title'),
        lead: t('subsoil.lime.lead'),
        stack: true,
        bars: 'volume',
        columns: [
          { key: 'state', head: t('subsoil.lime.state'), words: true },
          { key: 'mass', head: t('subsoil.lime.mass') },
          { key: 'volume', head: t('subsoil.lime.looseVolume') },
          { key: 'by-mass', head: t('subsoil.lime.byMass') },
          { key: 'by-volume', head: t('subsoil.lime.byVolume') },
          { key: 'ratio', head: t('subsoil.lime.ratio') },
        ],
        rows: states.map((one) => ({
          name: one.state,
          cells: {
            state: termLabel(data, 'measured-states', one.state),
            mass: { value: one.massKg, unit: 'kg' },
            volume: { value: one.volumeL, unit: 'L' },
            'by-mass': { value: one.percentByMass, unit: '%' },
            'by-volume': { value: one.percentByVolume, unit: '%' },
            ratio: { value: one.soilPerLime, unit: '1', as: 'ratio' },
          },
        })),
      },
      ...fibre,
      { kind: 'notice', tone: 'caution', text: t('subsoil.lime.caution') },
    ],
  }
}
