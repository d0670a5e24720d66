import type { BatchPart } from '#lib/mortar/batch.ts'
import type { JobIngredient } from '#lib/mortar/job-types.ts'
import { exactly } from '#lib/mortar/range.ts'
import { labelOf, materialLabel } from '../../_ui/label.ts'
import type { System } from '../../_ui/systems.ts'
import type { Block, Cell } from '../../_ui/workshop/shown.ts'
import { formatNumber } from '../../_words/format.ts'
import { words } from '../../_words/index.ts'
import { exactText, shownText } from '../../recipes/[slug]/job/shown.tsx'
import { inMoney, type Job } from './job.ts'

const t = words('job')

/** Every ingredient: as measured on site, by mass, in one load, and as bought. */
export function quantitiesOf({ sheet, inputs: { system, money } }: Job): Block {
  const { batch, ingredients } = sheet
  const priced = ingredients.some(({ cost }) => cost !== null)
  const costs = t('sheet.cost')
  const partOf = (index: number) => batch?.parts.find((part) => part.index === index)
  const columns = [
    { key: 'ingredient', head: t('sheet.ingredient') },
    { key: 'volume', head: t('sheet.volume') },
    { key: 'mass', head: t('sheet.mass') },
    ...(batch ? [{ key: 'load', head: t('sheet.load') }] : []),
    { key: 'order', head: t('sheet.order'), words: true },
    ...(priced ? [{ key: 'cost', head: inMoney(costs, money) }] : []),
  ]
  return {
    kind: 'table',
    name: 'quantities',
    title: t('sheet.quantities'),
    ...(batch && { lead: t('sheet.box', { box: exactText(batch.gaugeBoxL, 'L', system) }) }),
    columns,
    rows: ingredients.map((one) => ({
      name: `${one.index}-${one.material}`,
      cells: {
        ingredient: t('sheet.state', {
          material: materialLabel(one.material),
          state: labelOf('measured-states', one.state),
        }),
        volume: one.siteL && { value: one.siteL, unit: 'L', ...(one.role === 'water' && { liquid: true }) },
        mass: one.siteKg && { value: one.siteKg, unit: 'kg' },
        load: loadOf(partOf(one.index)),
        order: orderOf(one, system),
        cost: one.cost && { value: one.cost, unit: '1', as: 'money' },
      },
    })),
  }
}

const loadOf = (part: BatchPart | undefined): Cell =>
  part === undefined
    ? null
    : part.boxes === null
      ? { value: exactly(part.kg), unit: 'kg' }
      : t('sheet.boxes', { count: part.boxes })

function orderOf({ order, siteKg }: JobIngredient, system: System): string | null {
  if (order === null) return siteKg && t('sheet.loose')
  const { packs, packKg, leftKg } = order
  const spread =
    packs.low < packs.high
      ? [t('sheet.packsRange', { low: formatNumber(packs.low), high: formatNumber(packs.high) })]
      : []
  return [
    t('sheet.packs', { count: packs.typical, pack: exactText(packKg, 'kg', system) }),
    ...spread,
    t('sheet.left', { kg: shownText(exactly(leftKg), 'kg', system) }),
  ].join(' ')
}
