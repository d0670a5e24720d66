import type { KeptBlock } from '#lib/entry/kept-sheet.ts'
import type { RecipeBody } from '#lib/entry/recipe.ts'
import type { BatchPart } from '#lib/mortar/batch.ts'
import type { JobIngredient, JobSheet } from '#lib/mortar/job-types.ts'
import { exactly, type Range, scale } from '#lib/mortar/range.ts'
import { cautionWords } from '../_ui/caution-words.ts'
import { inSentence, labelList, labelOf, materialLabel } from '../_ui/label.ts'
import { quantityText } from '../_ui/quantity.tsx'
import type { Block, Cell, Figure } from '../_ui/workshop/calculation.ts'
import { formatList, formatNumber } from '../_words/format.ts'
import { words } from '../_words/index.ts'
import { jobCautions } from '../recipes/[slug]/job/cautions-line.tsx'
import { isOutsideUses, type System } from '../recipes/[slug]/job/fields.ts'
import { ofWork } from '../recipes/[slug]/job/labels.ts'
import type { Inputs } from '../recipes/[slug]/job/read-inputs.ts'
import { exactText, shownText } from '../recipes/[slug]/job/shown.tsx'
import { takenOf } from '../recipes/[slug]/job/taken-list.tsx'

interface Job {
  readonly sheet: JobSheet
  readonly recipe: RecipeBody
  readonly inputs: Inputs
}

type KeptList = Extract<KeptBlock, { kind: 'list' }>

const t = words('job')

/** A job sheet as parts that are kept, in the order in which it prints. */
export function jobBlocks(job: Job): (Block | KeptList)[] {
  const { sheet, recipe, inputs } = job
  return [
    ...standingOf(recipe, inputs),
    totalsOf(sheet, inputs.money),
    { kind: 'note', text: [t('sheet.waterNote'), ...(sheet.heat ? [t('sheet.heatNote')] : [])].join(' ') },
    ...worksOf(sheet),
    quantitiesOf(sheet, inputs),
    ...[warningsOf(job), sequenceOf(sheet), keepingOf(sheet), cautionsOf(job)].filter(
      ({ items }) => items.length > 0,
    ),
    { kind: 'note', text: t('sheet.cautionsNote') },
    ...takenIn(job),
  ]
}

function standingOf({ standing, standingReason }: RecipeBody, { reason }: Inputs): Block[] {
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
function totalsOf(sheet: JobSheet, money: string): Block {
  const { water, heat, batch, cost } = sheet
  const priced = sheet.ingredients.some((one) => one.cost !== null) ? cost : null
  const figure = (
    name: string,
    label: string,
    value: Range | number | null | undefined,
    unit = '1',
    liquid = false,
  ): Figure[] =>
    value === null || value === undefined ? [] : [{ name, label, value, unit, ...(liquid && { liquid }) }]
  const some = (range: Range) => (range.high > 0 ? range : null)
  const cash = (name: string, label: string, value: Range | null | undefined) =>
    figure(name, money === '' ? label : words('kept')('inMoney', { label, money }), value && toCents(value))
  return {
    kind: 'figures',
    name: 'job',
    title: words('kept')('job.totals'),
    figures: [
      ...figure('made', t('sheet.made'), sheet.mortarL, 'L'),
      ...figure('in-place', t('sheet.inPlace'), sheet.netL, 'L'),
      ...figure('bricks', t('sheet.bricks'), sheet.unitCount),
      ...figure('loads', t('sheet.loads'), batch && Math.round(batch.loads * 100) / 100),
      ...figure('load-makes', t('sheet.loadMakes'), batch && exactly(batch.mortarL), 'L'),
      ...figure('water-first', t('sheet.waterFirst'), water.firstChargeL, 'L', true),
      ...figure(
        'water-load',
        t('sheet.waterLoad'),
        batch && scale(exactly(water.firstChargeL.typical), 1 / batch.loads),
        'L',
        true,
      ),
      ...figure('water-total', t('sheet.waterTotal'), water.likelyTotalL, 'L', true),
      ...figure('water-sand', t('sheet.waterSand'), some(water.fromSandL), 'L', true),
      ...figure('heat', t('sheet.heat'), heat?.averageC, 'C'),
      ...figure('boiled', t('sheet.boiled'), some(water.boiledL), 'L', true),
      ...cash('cost-materials', t('sheet.costMaterials'), priced?.materials),
      ...cash('cost-labour', t('sheet.costLabour'), cost?.labour),
      ...cash('cost-total', t('sheet.costTotal'), priced?.labour && priced.total),
    ],
  }
}

/** What each of several works takes of the mortar; of one alone the totals say it all. */
function worksOf({ works, batch }: JobSheet): Block[] {
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
          loads: batch && { value: Math.round((mortarL.typical / batch.mortarL) * 10) / 10, unit: '1' },
          units: unitCount && { value: unitCount, unit: '1' },
        },
      })),
    },
  ]
}

/** Every ingredient: as measured on site, by mass, in one load, and as bought. */
function quantitiesOf(sheet: JobSheet, { system, money }: Inputs): Block {
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
    ...(priced
      ? [{ key: 'cost', head: money === '' ? costs : words('kept')('inMoney', { label: costs, money }) }]
      : []),
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
        cost: one.cost && { value: toCents(one.cost), unit: '1' },
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

function warningsOf({ sheet, recipe, inputs }: Job): KeptList {
  const { works } = inputs
  const strange = works.filter(({ kind }) => isOutsideUses(recipe, kind))
  const outside =
    strange.length === 0
      ? []
      : [
          {
            name: 'outside-its-uses',
            text: t(strange.length === works.length ? 'warnings.outside-its-uses' : 'warnings.some-outside', {
              uses: inSentence(labelList('uses', recipe.uses)),
              works: formatList(strange.map(({ number }) => String(number))),
            }),
          },
        ]
  const warned = sheet.warnings.map(({ id, material, value, unit }) => ({
    name: material === undefined ? id : `${id}-${material}`,
    text: t(`warnings.${id}`, {
      material: material === undefined ? '' : materialLabel(material),
      value: value === undefined || unit === undefined ? '' : shownText(exactly(value), unit, inputs.system),
    }),
  }))
  return { kind: 'list', name: 'warnings', title: t('sheet.warnings'), items: [...outside, ...warned] }
}

/** The order of work; a step may come twice, so its place is part of its name. */
const sequenceOf = ({ sequence }: JobSheet): KeptList => ({
  kind: 'list',
  name: 'sequence',
  title: t('sheet.sequence'),
  ordered: true,
  items: sequence.map(({ id, hours }, place) => ({
    name: `${place}-${id}`,
    text: hours === undefined ? t(`sequence.${id}`) : `${t(`sequence.${id}`)} ${lasting(hours)}`,
  })),
})

const HOURS_A_DAY = 24

/** Long waits are told in days. */
const lasting = (hours: Range): string =>
  hours.typical < HOURS_A_DAY ? said(hours, 'h') : said(scale(hours, 1 / HOURS_A_DAY), 'd')

const keepingOf = ({ storage }: JobSheet): KeptList => ({
  kind: 'list',
  name: 'keeping',
  title: t('sheet.keeping'),
  items: storage.map(({ material, id, days }) => {
    const how = t('sheet.pair', { name: materialLabel(material), value: t(`keeping.${id}`) })
    return { name: material, text: days ? `${how} ${said(days, 'd')}` : how }
  }),
})

const cautionsOf = ({ sheet, recipe }: Job): KeptList => ({
  kind: 'list',
  name: 'cautions',
  title: t('sheet.cautions'),
  items: jobCautions(sheet, recipe).map((caution) => {
    const { title, notice } = cautionWords(caution)
    return { name: caution.id, text: `${title}. ${notice}` }
  }),
})

/** What was assumed. Of figures in a table the label is the name: each stands once. */
function takenIn({ sheet, inputs }: Job): Block[] {
  const taken = takenOf(sheet, inputs)
  if (taken.length === 0) return []
  return [
    {
      kind: 'table',
      name: 'taken',
      title: t('taken.title'),
      columns: [
        { key: 'figure', head: t('taken.figure') },
        { key: 'value', head: t('taken.value') },
      ],
      rows: taken.map(({ label, value, unit, basis, source }) => ({
        name: label.slice(0, 200),
        cells: { figure: label, value: { value, unit, basis, ...(source !== undefined && { source }) } },
      })),
      stack: true,
    },
  ]
}

function said(value: Range, unit: string): string {
  const { main, range } = quantityText(value, unit)
  return range === null ? main : `${main} ${range}`
}

const toCents = ({ low, typical, high }: Range): Range => ({
  low: Math.round(low * 100) / 100,
  typical: Math.round(typical * 100) / 100,
  high: Math.round(high * 100) / 100,
})
