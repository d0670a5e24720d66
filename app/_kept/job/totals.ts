import { exactly, type Range, scale } from '#lib/mortar/range.ts'
import { labelOf } from '../../_ui/label.ts'
import type { Block, Figure } from '../../_ui/workshop/shown.ts'
import { formatNumber } from '../../_words/format.ts'
import { words } from '../../_words/index.ts'
import { ofWork } from '../../recipes/[slug]/job/labels.ts'
import { loadsText } from '../../recipes/[slug]/job/loads-text.ts'
import { inMoney, type Job } from './job.ts'

const t = words('job')

/** That a recipe is not in use, why, and why somebody worked from it all the same. */
export function standingOf({ recipe: { standing, standingReason }, inputs: { reason } }: Job): Block[] {
  if (standing === 'in-use') return []
  return [
    {
      kind: 'notice',
      tone: standing === 'known-hazard' ? 'hazard' : 'caution',
      title: labelOf('standings', standing),
      text: [standingReason, t('standing.printed', { reason })].filter((one) => one !== undefined).join(' '),
    },
  ]
}

/** The job in a few figures; what the sheet leaves out is left out here too. */
export function totalsOf({ sheet, inputs: { money } }: Job): Block {
  const { water, heat, batch, cost } = sheet
  const priced = sheet.ingredients.some((one) => one.cost !== null) ? cost : null
  const figure = (
    name: string,
    label: string,
    value: Range | number | null | undefined,
    unit = '1',
    more: Pick<Figure, 'liquid' | 'as' | 'note'> = {},
  ): Figure[] => (value === null || value === undefined ? [] : [{ name, label, value, unit, ...more }])
  const liquid = { liquid: true }
  const some = (range: Range) => (range.high > 0 ? range : null)
  const cash = (name: string, label: string, value: Range | null | undefined) =>
    figure(name, inMoney(label, money), value, '1', { as: 'money' })
  return {
    kind: 'figures',
    name: 'job',
    title: words('kept')('job.totals'),
    figures: [
      ...figure('made', t('sheet.made'), sheet.mortarL, 'L'),
      ...figure('in-place', t('sheet.inPlace'), sheet.netL, 'L'),
      ...figure('bricks', t('sheet.bricks'), sheet.unitCount),
      ...figure('loads', t('sheet.loads'), batch && Math.round(batch.loads * 100) / 100, '1', {
        note: batch ? loadsText(batch.loads) : '',
      }),
      ...figure('load-makes', t('sheet.loadMakes'), batch && exactly(batch.mortarL), 'L'),
      ...figure('water-first', t('sheet.waterFirst'), water.firstChargeL, 'L', liquid),
      ...figure(
        'water-load',
        t('sheet.waterLoad'),
        batch && scale(exactly(water.firstChargeL.typical), 1 / batch.loads),
        'L',
        liquid,
      ),
      ...figure('water-total', t('sheet.waterTotal'), water.likelyTotalL, 'L', liquid),
      ...figure('water-sand', t('sheet.waterSand'), some(water.fromSandL), 'L', liquid),
      ...figure('heat', t('sheet.heat'), heat?.averageC, 'C'),
      ...figure('boiled', t('sheet.boiled'), some(water.boiledL), 'L', liquid),
      ...cash('cost-materials', t('sheet.costMaterials'), priced?.materials),
      ...cash('cost-labour', t('sheet.costLabour'), cost?.labour),
      ...cash('cost-total', t('sheet.costTotal'), priced?.labour && priced.total),
    ],
  }
}

/** What each of several works takes of the mortar; of one alone the totals say it all. */
export function worksOf({ sheet: { works, batch } }: Job): Block[] {
  if (works.length < 2) return []
  const counted = works.some(({ unitCount }) => unitCount !== null)
  return [
    {
      kind: 'table',
      name: 'works',
      title: t('works.title'),
      lead: t('works.note'),
      columns: [
        { key: 'work', head: t('works.work') },
        { key: 'net', head: t('sheet.inPlace') },
        { key: 'made', head: t('sheet.made') },
        ...(batch ? [{ key: 'loads', head: t('works.loads') }] : []),
        ...(counted ? [{ key: 'units', head: t('sheet.bricks') }] : []),
      ],
      rows: works.map(({ kind, netL, mortarL, unitCount }, k) => ({
        name: `${k + 1}-${kind}`,
        cells: {
          work: ofWork(k + 1, true, t(`kinds.${kind}`)),
          net: { value: netL, unit: 'L' },
          made: { value: mortarL, unit: 'L' },
          loads: batch && formatNumber(mortarL.typical / batch.mortarL, 1),
          units: unitCount && { value: unitCount, unit: '1' },
        },
      })),
    },
  ]
}
