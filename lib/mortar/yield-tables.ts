import { attempt, MortarFault, type Outcome } from './fault.ts'
import type { IngredientInput, IngredientRole, IngredientState } from './ingredient.ts'
import type { Properties } from './material.ts'
import { type Basis, exactly, type Range } from './range.ts'
import { convert } from './units.ts'
import { type HANDBOOK_YIELDS, yieldOf } from './yield.ts'

/** A book's table of cement and sand: by parts of sand to one of cement, what a measure of mortar takes. */
interface CementTable {
  readonly id: 'schedule-of-rates' | 'barrels-per-yard'
  readonly source: string
  /** At which the table counts its cement, kg/m³. */
  readonly cementKgM3: number
  /** Parts of sand, and the cement in the table's own count. */
  readonly rows: readonly (readonly [sand: number, cement: number])[]
  /** Measures of mortar from one of cement. */
  mortarOf(cement: number): number
}

const BARREL_LB = 380
const BARREL_FT3 = 4
const SCHEDULE_KG_M3 = 1440

const CEMENT_TABLES: readonly CementTable[] = [
  {
    id: 'schedule-of-rates',
    source: 'cpwd-dsr-2018, table Coefficients 3.1 to 3.11',
    cementKgM3: SCHEDULE_KG_M3,
    rows: [
      [1, 1020],
      [2, 680],
      [3, 510],
      [4, 380],
      [5, 310],
      [6, 250],
    ],
    mortarOf: (kgPerM3) => SCHEDULE_KG_M3 / kgPerM3,
  },
  {
    id: 'barrels-per-yard',
    source: 'gillette-hill-1908, table Barrels of cement per cubic yard of mortar',
    cementKgM3: convert(BARREL_LB / BARREL_FT3, 'lb/ft3', 'kg/m3'),
    rows: [
      [1, 4.19],
      [1.5, 3.46],
      [2, 3],
      [2.5, 2.64],
      [3, 2.05],
      [4, 1.54],
    ],
    mortarOf: (perYd3) => convert(1, 'yd3', 'L') / (perYd3 * convert(BARREL_FT3, 'ft3', 'L')),
  },
]

export const YIELD_REASON_IDS = ['rich-in-cement', 'richer-than-voids', 'other'] as const
export type YieldReason = (typeof YIELD_REASON_IDS)[number]

/** One figure of a book beside ours: measures of mortar from one of binder and some of dry loose sand. */
export interface YieldComparison {
  readonly book: CementTable['id'] | (typeof HANDBOOK_YIELDS)[number]['id']
  readonly binder: 'cement' | 'lump-quicklime'
  readonly sandParts: number
  readonly said: number
  readonly ours: Range
  /** How far our typical figure lies above the book's, % of the book's; below zero, below. */
  readonly differencePercent: number
  /** Why they differ, where it is by more than {@link AGREES_PERCENT}. */
  readonly reason: YieldReason | null
  readonly basis: Basis
  readonly source?: string
}

/** Books round to two figures, suppose voids of their own and count some loss. */
export const AGREES_PERCENT = 10

/** The lime mortar that the factors are tried on: one of lump quicklime to so much sand. */
const LIME_SAND_PARTS = 3

/**
 * Every figure that books give for the mortar a heap makes beside our absolute volumes, the ones that disagree
 * with their reason, for the page on method.
 *
 * @param materials an air lime, a sand, and a Portland cement, whose bulk density is taken from each table
 * @returns faults: a property missing that the yield needs
 */
export const compareYields = (
  materials: Readonly<Record<'lime' | 'sand' | 'cement', Properties>>,
): Outcome<readonly YieldComparison[]> =>
  attempt(() => [...limeRows(materials), ...CEMENT_TABLES.flatMap((table) => cementRows(table, materials))])

type Given = Parameters<typeof compareYields>[0]

function limeRows({ lime, sand }: Given): YieldComparison[] {
  const found = mortar('lime', 'lump-quicklime', lime, sand, LIME_SAND_PARTS)
  return found.handbooks.map(({ id, mortarL: said, differencePercent, basis, source }) => ({
    book: id,
    binder: 'lump-quicklime',
    sandParts: LIME_SAND_PARTS,
    said,
    ours: found.mortarL,
    differencePercent,
    reason: agrees(differencePercent) ? null : 'richer-than-voids',
    basis,
    ...(source === undefined ? {} : { source }),
  }))
}

function cementRows(
  { id, source, cementKgM3, rows, mortarOf }: CementTable,
  given: Given,
): YieldComparison[] {
  const counted = { ...exactly(cementKgM3), unit: 'kg/m3', basis: 'read' } as const
  return rows.map(([sandParts, cement]) => {
    const ours = mortar(
      'cement',
      'dry',
      { ...given.cement, bulkDensity: counted },
      given.sand,
      sandParts,
    ).mortarL
    const said = mortarOf(cement)
    const differencePercent = 100 * (ours.typical / said - 1)
    const reason = differencePercent > 0 ? 'rich-in-cement' : 'other'
    return {
      book: id,
      binder: 'cement',
      sandParts,
      said,
      ours,
      differencePercent,
      reason: agrees(differencePercent) ? null : reason,
      basis: 'read',
      source,
    }
  })
}

const agrees = (differencePercent: number): boolean => Math.abs(differencePercent) <= AGREES_PERCENT

/** Mortar of one measure of a binder and some of dry sand. */
function mortar(
  role: IngredientRole,
  state: IngredientState,
  binder: Properties,
  sand: Properties,
  sandParts: number,
) {
  const parts = (low: number) => ({ low, high: low })
  const ingredients: readonly IngredientInput[] = [
    { material: 'binder', role, parts: parts(1), by: 'volume', state },
    { material: 'sand', role: 'aggregate', parts: parts(sandParts), by: 'volume', state: 'dry' },
  ]
  const outcome = yieldOf({ ingredients, materials: { binder, sand } })
  if (outcome.ok) return outcome.value
  throw new MortarFault(...outcome.faults)
}
