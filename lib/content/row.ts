import { STANDINGS, type Standing, USES, type Use } from '#lib/entry/terms.ts'
import { BASES, type Basis } from '#lib/mortar/range.ts'
import type { Collection } from './collect.ts'
import type { FaultList, Place } from './fault.ts'
import { readIngredients } from './ingredients.ts'
import type { Cell } from './markdown.ts'
import { RowCells, type TableFront } from './row-cells.ts'
import { checkCitation } from './sources.ts'
import type { Material, RowIngredient, Source, TableRow } from './types.ts'

/** The columns that a proportion table may have, in the order they are best written in. */
export const COLUMNS: readonly string[] = [
  'id',
  'label',
  'use',
  'measured',
  'ingredients',
  'locator',
  'additions',
  'notes',
  'ambiguous',
  'ancestor',
  'source',
  'region',
  'period',
  'from',
  'to',
  'basis',
  'standing',
  'reason',
]

/** The locator of a row whose place in the source nobody has seen. */
const NOT_KNOWN = 'not known'

/** What a row needs to know of its table and of the rest of content. */
export interface RowContext {
  readonly table: string
  readonly defaults: TableFront
  readonly sources: Collection<Source>
  readonly materials: Collection<Material>
  readonly faults: FaultList
}

/** Reads one row; a cell left empty takes the front matter's value. Faults are added where they are. */
export function readRow(
  from: ReadonlyMap<string, Cell>,
  place: Place,
  context: RowContext,
): TableRow | undefined {
  const cells = new RowCells(from, place, context.defaults, context.faults)
  const id = cells.required('id')
  if (id !== '' && !/^[a-z0-9]+(-[a-z0-9]+)*$/.test(id)) {
    cells.fail('id', `"${id}" is not an id such as pit-sand`)
  }
  const basis = cells.oneOf<Basis>('basis', BASES)
  const standing = cells.oneOf<Standing>('standing', STANDINGS)
  const ingredients = readMix(cells, context)
  const row = {
    id,
    ref: `${context.table}#${id}`,
    table: context.table,
    label: cells.required('label'),
    region: cells.required('region'),
    period: cells.required('period'),
    ...readYears(cells),
    uses: readUses(cells),
    measured: cells.required('measured'),
    citation: readCitation(cells, basis, context),
    ...cells.given('additions', 'notes', 'ambiguous', 'ancestor'),
    ...readReason(cells, standing, context),
  }
  if (standing !== undefined) checkStanding(standing, ingredients, cells.at('standing'), context)
  if (!cells.isWhole || basis === undefined || standing === undefined) return undefined
  return { ...row, ingredients, basis, standing }
}

function readYears(cells: RowCells): { from: number; to: number } {
  const [from, to] = [cells.year('from'), cells.year('to')]
  if (from > to) cells.fail('to', `to (${to}) is before from (${from})`)
  return { from, to }
}

const isUse = (use: string): use is Use => (USES as readonly string[]).includes(use)

function readUses(cells: RowCells): Use[] {
  const uses = cells
    .required('use')
    .split(/[ ,]+/)
    .filter((use) => use !== '')
  for (const use of uses) {
    if (!isUse(use)) cells.fail('use', `unknown use "${use}"; one of: ${USES.join(' ')}`)
  }
  return uses.filter(isUse)
}

function readCitation(cells: RowCells, basis: Basis | undefined, { sources, faults }: RowContext) {
  const [source, locator] = [cells.required('source'), cells.required('locator')]
  const isKnown = locator !== NOT_KNOWN
  if (!isKnown && basis !== 'memory' && basis !== 'quoted') {
    cells.fail('locator', `only a quoted row or one from memory may have the locator "${NOT_KNOWN}"`)
  }
  if (source !== '' && locator !== '') {
    checkCitation(sources, source, isKnown ? locator : undefined, cells.at('locator'), faults)
  }
  return { source, locator }
}

function readReason(cells: RowCells, standing: Standing | undefined, { defaults }: RowContext) {
  const standingReason =
    cells.optional('reason') ?? (standing === defaults.standing ? defaults.reason : undefined)
  if (standingReason !== undefined) return { standingReason }
  if (standing !== undefined && standing !== 'in-use') {
    cells.fail('standing', `standing ${standing} needs a reason`)
  }
  return {}
}

function readMix(cells: RowCells, { materials, faults }: RowContext): readonly RowIngredient[] {
  const text = cells.required('ingredients')
  if (text === '') return []
  const read = readIngredients(text, (material) =>
    materials.isUnread(material) ? 'unread' : materials.get(material)?.role,
  )
  if (read.ok) return read.ingredients
  const place = cells.at('ingredients')
  for (const { at, reason } of read.faults) faults.add({ ...place, column: place.column + at }, reason)
  return []
}

/** A mix is never offered more freely than the worst of its materials. */
function checkStanding(
  standing: Standing,
  ingredients: readonly RowIngredient[],
  place: Place,
  context: RowContext,
): void {
  for (const { material } of ingredients) {
    const worst = context.materials.get(material)?.standing ?? 'in-use'
    if (STANDINGS.indexOf(standing) < STANDINGS.indexOf(worst)) {
      context.faults.add(
        place,
        `standing ${standing} is more free than that of ${material}, which is ${worst}`,
      )
    }
  }
}
