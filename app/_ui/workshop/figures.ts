import { sha256 } from '@noble/hashes/sha2.js'
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js'
import type { Range } from '#lib/mortar/range.ts'
import { convert, convertRange, shownUnit } from '#lib/mortar/units.ts'
import { moneyText } from '../money-text.ts'
import { quantityText } from '../quantity.tsx'
import { ratioText } from '../ratio-text.ts'
import type { System } from '../systems.ts'
import { type Block, type Cell, type Figure, type Said, wordsOf } from './shown.ts'

type Printable = Pick<Figure, 'value' | 'unit' | 'as' | 'liquid' | 'bench'>

/** A figure in the units that the reader works in. Cubic feet from a cubic yard up become cubic yards. */
export function inSystem({ value, unit, liquid, bench }: Printable, system: System) {
  if (value === null || bench || system === 'metric') return { value, unit }
  const typical = typeof value === 'number' ? value : value.typical
  const us = shownUnit(unit, system, liquid)
  const shown = us === 'ft3' && convert(typical, unit, 'yd3') >= 1 ? 'yd3' : us
  if (shown === unit) return { value, unit }
  return typeof value === 'number'
    ? { value: Number(convert(value, unit, shown).toPrecision(4)), unit: shown }
    : { value: convertRange(value, unit, shown), unit: shown }
}

/** What a figure prints, as text; null for one that is not known. */
export function figureText(figure: Printable, system: System): string | null {
  const { value, unit } = inSystem(figure, system)
  if (value === null) return null
  if (figure.as === 'ratio')
    return ratioText(typeof value === 'number' ? { low: value, typical: value, high: value } : value)
  const { main, range } = figure.as === 'money' ? moneyText(value) : quantityText(value, unit)
  return range === null ? main : `${main} ${range}`
}

/** One figure of a result by the name that downloads give it. */
export interface NamedFigure extends Printable {
  readonly name: string
  readonly label: string
}

/** Does this cell hold a figure? */
export const isFigure = (cell: Cell | undefined): cell is Exclude<Cell, Said | string | null> =>
  typeof cell === 'object' && cell !== null && 'value' in cell

/** Every figure of a result, tables row by row. */
export const namedFigures = (blocks: readonly Block[]): NamedFigure[] =>
  blocks.flatMap((block): NamedFigure[] => {
    if (block.kind === 'figures')
      return block.figures.map((figure) => ({ ...figure, name: `${block.name}.${figure.name}` }))
    if (block.kind !== 'table') return []
    const [names] = block.columns
    return block.rows.flatMap(({ name, cells }) => {
      const row = wordsOf(names && cells[names.key]) ?? name
      return block.columns.flatMap(({ key, head: column }) => {
        const cell = cells[key]
        return isFigure(cell)
          ? [{ ...cell, name: `${block.name}.${name}.${key}`, label: `${row}, ${column}` }]
          : []
      })
    })
  })

/** Words that a result's tables hold beside their figures, and its notices. */
export const namedWords = (blocks: readonly Block[]): { name: string; label: string; words: string }[] =>
  blocks.flatMap((block) => {
    if (block.kind !== 'table') return []
    const [names, ...others] = block.columns
    return block.rows.flatMap(({ name, cells }) =>
      others.flatMap(({ key, head }) => {
        const said = saidIn(cells[key])
        const row = wordsOf(names && cells[names.key]) ?? name
        return said === undefined
          ? []
          : [{ name: `${block.name}.${name}.${key}`, label: `${row}, ${head}`, words: said }]
      }),
    )
  })

/** Words of a cell with where they come from, as a file holds them. */
function saidIn(cell: Cell | undefined): string | undefined {
  const said = wordsOf(cell)
  if (said === undefined || typeof cell !== 'object' || cell === null) return said
  return [said, cell.source, cell.basis].filter((one) => one !== undefined && one !== '').join(' · ')
}

/**
 * A short digest of every figure and word of a result as it is printed: two results with the same digest
 * show the same. Metric, so that it does not turn on the units they are shown in.
 */
export function digestOf(blocks: readonly Block[]): string {
  const lines = [
    ...namedFigures(blocks).map((figure) => `${figure.name}=${figureText(figure, 'metric') ?? ''}`),
    ...namedWords(blocks).map(({ name, words }) => `${name}=${words}`),
  ]
  return bytesToHex(sha256(utf8ToBytes(lines.join('\n')))).slice(0, 10)
}

/** The widest end of the ranges that one scale must hold. */
export const scaleEnd = (ranges: readonly (Range | number | null)[]): number =>
  Math.max(0, ...ranges.map((one) => (one === null ? 0 : typeof one === 'number' ? one : one.high)))
