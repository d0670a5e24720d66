import { createHash } from 'node:crypto'
import type { JobSheet } from '#lib/mortar/job-types.ts'
import type { Range } from '#lib/mortar/range.ts'
import { quantityText } from '../../../_ui/quantity.tsx'

/**
 * A short digest of every figure that a sheet prints, as it is rounded for print: two sheets with the same
 * digest show the same figures. Metric, so that it does not turn on the units they are shown in.
 */
export function digestOf(sheet: JobSheet): string {
  const lines = printedFigures(sheet).map(([name, text]) => `${name}=${text}`)
  return createHash('sha256').update(lines.join('\n')).digest('hex').slice(0, 10)
}

/** Every printed figure by name. */
function printedFigures(sheet: JobSheet): [name: string, text: string][] {
  const { water, heat, batch, cost } = sheet
  const figures: [string, Range | number | null, string][] = [
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
    ...sheet.ingredients.flatMap(({ material, index, siteL, siteKg, order, cost }): typeof figures => [
      [`${index}.${material}.volume`, siteL, 'L'],
      [`${index}.${material}.mass`, siteKg, 'kg'],
      [`${index}.${material}.packs`, order?.packs ?? null, '1'],
      [`${index}.${material}.left`, order?.leftKg ?? null, 'kg'],
      [`${index}.${material}.cost`, cost, '1'],
    ]),
    ...(batch?.parts ?? []).flatMap(({ material, index, boxes, kg }): typeof figures => [
      [`${index}.${material}.load`, boxes ?? kg, boxes === null ? 'kg' : '1'],
    ]),
    ...sheet.sequence.map(({ id, hours }): (typeof figures)[number] => [`step.${id}`, hours ?? null, 'h']),
  ]
  return figures.flatMap(([name, value, unit]) => {
    if (value === null) return []
    const { main, range } = quantityText(value, unit)
    return [[name, range === null ? main : `${main} ${range}`]]
  })
}

/** Those of each work, where there are several; a single work has the job's own. */
const ofWorks = ({ works }: JobSheet): [string, Range | null, string][] =>
  works.length === 1
    ? []
    : works.flatMap(({ netL, mortarL, unitCount }, k): [string, Range | null, string][] => [
        [`work.${k}.net`, netL, 'L'],
        [`work.${k}.mortar`, mortarL, 'L'],
        [`work.${k}.units`, unitCount, '1'],
      ])
