import type { SchemeClass } from '#lib/mortar/chemistry.ts'
import type { Range } from '#lib/mortar/range.ts'
import type { Block, Figure, Shown } from '../../_ui/workshop/shown.ts'
import { formatList } from '../../_words/format.ts'
import { words } from '../../_words/index.ts'
import type { HydraulicFound } from './calculation.ts'

/** Indices and free lime, then the class under each author, with what a class does not say. */
export function show(found: HydraulicFound): Shown {
  const t = words('workOut')
  const figure = (
    name: 'candlot' | 'full' | 'cementation' | 'free' | 'hydrate' | 'oxides',
    value: Range,
    unit: string,
  ): Figure => ({ name, label: t(`hydraulicity.results.${name}`), value, unit })
  const figures =
    found.from === 'oxides'
      ? [
          figure('candlot', found.chemistry.candlotIndex, '1'),
          figure('full', found.chemistry.fullIndex, '1'),
          figure('cementation', found.chemistry.cementationIndex, '1'),
          figure('free', found.chemistry.freeCaO, '%'),
          figure('hydrate', found.chemistry.freeHydrate, '%'),
        ]
      : [figure('oxides', found.oxides, '%'), figure('candlot', found.candlotIndex, '1')]
  const classes = found.from === 'oxides' ? found.chemistry.classes : found.classes
  const blocks: Block[] = [
    { kind: 'figures', name: 'indices', title: t('hydraulicity.results.indices'), figures },
    ...(found.from === 'oxides' ? [] : [{ kind: 'note', text: t('hydraulicity.results.burnt') } as const]),
    {
      kind: 'table',
      name: 'classes',
      title: t('hydraulicity.results.classes'),
      stack: true,
      columns: [
        { key: 'scheme', head: t('hydraulicity.results.scheme') },
        { key: 'value', head: t('hydraulicity.results.value') },
        { key: 'typical', head: t('hydraulicity.results.typical'), words: true },
        { key: 'touched', head: t('hydraulicity.results.touched'), words: true },
      ],
      rows: classes.map((one) => ({
        name: one.scheme,
        cells: {
          scheme: t(`hydraulicity.schemes.${one.scheme as Scheme}`),
          value: {
            value: one.value,
            unit: one.measure === 'clay' || one.measure === 'oxides' ? '%' : '1',
            basis: one.basis,
            source: one.source,
          },
          typical:
            one.typical === null ? t('hydraulicity.results.gap') : t(`hydraulicity.classes.${one.typical}`),
          touched: touchedText(one),
        },
      })),
    },
    { kind: 'notice', tone: 'note', text: t('hydraulicity.results.chemistryAlone') },
  ]
  return { blocks, steps: found.from === 'oxides' ? found.chemistry.steps : [] }
}

type Scheme =
  | 'candlot-index'
  | 'candlot-oxides'
  | 'candlot-clay'
  | 'notes-clay'
  | 'vicat-index'
  | 'cementation'

const touchedText = ({ classes }: SchemeClass): string => {
  const t = words('workOut')
  return classes.length === 0
    ? t('hydraulicity.results.none')
    : formatList(
        classes.map((one) => t(`hydraulicity.classes.${one}`)),
        'disjunction',
      )
}
