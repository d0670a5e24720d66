import { createHash } from 'node:crypto'
import type { JobSheet } from '#lib/mortar/job-types.ts'
import type { Range } from '#lib/mortar/range.ts'
import { quantityText } from '../../../_ui/quantity.tsx'

/**
 * A short digest of every figure that a sheet and its batch card print, as it is rounded for print: two sheets with the
 * same digest show the same figures. Metric, so that it does not turn on the units they are shown in.
 */
export const digestOf = (sheet: JobSheet): string =>
  digest([...figuresOfSheet(sheet), ...figuresAdded(sheet)])

/**
 * Digests of fewer figures, as addresses name them that were made before others were counted in. Where figures are added
 * to {@link digestOf}, what it was before goes here, so that old addresses are still compared with what they cover.
 */
export const shorterDigestsOf = (sheet: JobSheet): readonly string[] => [digest(figuresOfSheet(sheet))]

type PrintedFigure = [name: string, value: Range | number | null, unit: string]

function digest(figures: readonly PrintedFigure[]): string {
  const lines = figures.flatMap(([name, value, unit]) => {
    if (value === null) return []
    const { main, range } = quantityText(value, unit)
    return [`${name}=${range === null ? main : `${main} ${range}`}`]
  })
  return createHash('sha256').update(lines.join('\n')).digest('hex').slice(0, 10)
}

/** The figures that addresses have named from the first. Their names and order are part of those addresses. */
function figuresOfSheet(sheet: JobSheet): PrintedFigure[] {
  const { water, heat, batch, cost } = sheet
  return [
    ['net', sheet.netL, 'L'],
    ['mortar', sheet.mortarL, 'L'],
    ['units', sheet.unitCount, '1'],
    ...ofWorks(sheet),
    ['first', water.firstChargeL, 'L'],
    ['total', water.likelyTotalL, 'L'],
    ['sand', water.fromSandL, 'L'],
    ['boiled', water.boiledL, 'L'],
    ['heat', heat?.averageC ?? null, 'C'],
    ['loads', batch?.loads ?? null, '1'],
    ['load', batch?.mortarL ?? null, 'L'],
    ['materials', sheet.ingredients.some((one) => one.cost !== null) ? (cost?.materials ?? null) : null, '1'],
    ...sheet.ingredients.flatMap(({ material, index, siteL, siteKg, order, cost }): PrintedFigure[] => [
      [`${index}.${material}.volume`, siteL, 'L'],
      [`${index}.${material}.mass`, siteKg, 'kg'],
      [`${index}.${material}.packs`, order?.packs ?? null, '1'],
      [`${index}.${material}.left`, order?.leftKg ?? null, 'kg'],
      [`${index}.${material}.cost`, cost, '1'],
    ]),
    ...(batch?.parts ?? []).flatMap(({ material, index, boxes, kg }): PrintedFigure[] => [
      [`${index}.${material}.load`, boxes ?? kg, boxes === null ? 'kg' : '1'],
    ]),
    ...sheet.sequence.map(({ id, hours }): PrintedFigure => [`step.${id}`, hours ?? null, 'h']),
  ]
}

/** Those counted in since: one load as the batch card has it, labour, and what warnings and keeping name. */
function figuresAdded({ batch, cost, ingredients, warnings, storage }: JobSheet): PrintedFigure[] {
  const priced = ingredients.some((one) => one.cost !== null)
  return [
    ['load.first', batch?.firstChargeL ?? null, 'L'],
    ['load.total', batch?.likelyTotalL ?? null, 'L'],
    ['load.makes', batch?.makesL ?? null, 'L'],
    ['labour', cost?.labour ?? null, '1'],
    ['cost', priced && cost?.labour ? cost.total : null, '1'],
    ...warnings.map(
      ({ id, material = '', value, unit }): PrintedFigure => [
        `warning.${id}.${material}`,
        value ?? null,
        unit ?? '1',
      ],
    ),
    ...storage.map(
      ({ material, id, days }): PrintedFigure => [`keeping.${material}.${id}`, days ?? null, 'd'],
    ),
  ]
}

/** Those of each work, where there are several; a single work has the job's own. */
const ofWorks = ({ works }: JobSheet): PrintedFigure[] =>
  works.length === 1
    ? []
    : works.flatMap(({ netL, mortarL, unitCount }, k): PrintedFigure[] => [
        [`work.${k}.net`, netL, 'L'],
        [`work.${k}.mortar`, mortarL, 'L'],
        [`work.${k}.units`, unitCount, '1'],
      ])
