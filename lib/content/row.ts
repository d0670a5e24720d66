import type { z } from 'zod'
import { STANDINGS, type Standing, USES, type Use } from '#lib/entry/terms.ts'
import { BASES, type Basis } from '#lib/mortar/range.ts'
import type { Collection } from './collect.ts'
import type { FaultList, Place } from './fault.ts'
import { readIngredients } from './ingredients.ts'
import type { Cell } from './markdown.ts'
import type { tableFront } from './schemas.ts'
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
  readonly defaults: z.infer<typeof tableFront>
  readonly sources: Collection<Source>
  readonly materials: Collection<Material>
  readonly faults: FaultList
}

/** Reads one row; a cell left empty takes the front matter's value. Faults are added where they are. */
export function readRow(
  cells: ReadonlyMap<string, Cell>,
  place: Place,
  context: RowContext,
): TableRow | undefined {
  const { defaults, faults } = context
  let isWhole = true
  const fail = (at: Place, reason: string) => {
    faults.add(at, reason)
    isWhole = false
  }
  const at = (name: string) => cells.get(name)?.place ?? place
  const optional = (name: string) => cells.get(name)?.text || undefined
  const required = (name: string, fallback?: string): string => {
    const value = optional(name) ?? fallback
    if (value === undefined) fail(at(name), `a row needs a ${name}`)
    return value ?? ''
  }
  const oneOf = <T extends string>(
    name: string,
    list: readonly T[],
    fallback: T | undefined,
  ): T | undefined => {
    const value = required(name, fallback)
    const known = list.find((item) => item === value)
    if (known === undefined && value !== '')
      fail(at(name), `unknown ${name} "${value}"; one of: ${list.join(' ')}`)
    return known
  }
  const year = (name: 'from' | 'to'): number => {
    const value = Number(required(name, defaults[name]?.toString()))
    if (!Number.isInteger(value)) fail(at(name), `${name} must be a year such as 1810 or -30`)
    return value
  }

  const id = required('id')
  if (id !== '' && !/^[a-z0-9]+(-[a-z0-9]+)*$/.test(id))
    fail(at('id'), `"${id}" is not an id such as pit-sand`)
  const uses = required('use', defaults.use?.join(' '))
    .split(/[ ,]+/)
    .filter((use) => use !== '')
  for (const use of uses) if (!isUse(use)) fail(at('use'), `unknown use "${use}"; one of: ${USES.join(' ')}`)
  const [from, to] = [year('from'), year('to')]
  if (from > to) fail(at('to'), `to (${to}) is before from (${from})`)
  const basis = oneOf<Basis>('basis', BASES, defaults.basis)
  const standing = oneOf<Standing>('standing', STANDINGS, defaults.standing)
  const standingReason = optional('reason') ?? (standing === defaults.standing ? defaults.reason : undefined)
  if (standing !== undefined && standing !== 'in-use' && standingReason === undefined) {
    fail(at('standing'), `standing ${standing} needs a reason`)
  }
  const source = required('source', defaults.source)
  const locator = required('locator')
  const isPlaceKnown = locator !== NOT_KNOWN
  if (!isPlaceKnown && basis !== 'memory' && basis !== 'quoted') {
    fail(at('locator'), `only a quoted row or one from memory may have the locator "${NOT_KNOWN}"`)
  }
  if (source !== '' && locator !== '') {
    checkCitation(context.sources, source, isPlaceKnown ? locator : undefined, at('locator'), faults)
  }

  const ingredients = readIngredientsCell(required('ingredients'), at('ingredients'), context)
  if (standing !== undefined) checkStanding(standing, ingredients ?? [], at('standing'), context)
  const ambiguous = optional('ambiguous')
  const ancestor = optional('ancestor')
  const additions = optional('additions')
  const notes = optional('notes')
  const row = {
    id,
    ref: `${context.table}#${id}`,
    table: context.table,
    label: required('label'),
    region: required('region', defaults.region),
    period: required('period', defaults.period),
    from,
    to,
    uses: uses.filter(isUse),
    measured: required('measured', defaults.measured),
    citation: { source, locator },
    ...(additions !== undefined && { additions }),
    ...(notes !== undefined && { notes }),
    ...(ambiguous !== undefined && { ambiguous }),
    ...(ancestor !== undefined && { ancestor }),
    ...(standingReason !== undefined && { standingReason }),
  }
  if (!isWhole || !ingredients || basis === undefined || standing === undefined) return undefined
  return { ...row, ingredients, basis, standing }
}

const isUse = (use: string): use is Use => (USES as readonly string[]).includes(use)

function readIngredientsCell(text: string, place: Place, { materials, faults }: RowContext) {
  if (text === '') return undefined
  const read = readIngredients(text, (material) =>
    materials.isUnread(material) ? 'unread' : materials.get(material)?.role,
  )
  if (read.ok) return read.ingredients
  for (const { at, reason } of read.faults) faults.add({ ...place, column: place.column + at }, reason)
  return undefined
}

/** A mix is never offered more freely than the worst of its materials. */
function checkStanding(
  standing: Standing,
  ingredients: readonly RowIngredient[],
  place: Place,
  context: RowContext,
) {
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
