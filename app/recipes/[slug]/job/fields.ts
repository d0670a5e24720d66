import type { RecipeBody } from '#lib/entry/recipe.ts'
import { LIME_STATES, type LimeState, type Use } from '#lib/entry/terms.ts'
import type { Basis, Range } from '#lib/mortar/range.ts'
import { WORK_KINDS, type WorkKind, workFields } from '#lib/mortar/takeoff.ts'

/** How wet the sand and earth on site are. */
export const SANDS = ['dry', 'damp', 'measured'] as const
export type Sand = (typeof SANDS)[number]

/** One figure that the form asks for. */
export interface AmountField {
  /** As the address names it. */
  readonly name: string
  /** As the request and the faults of the sums name it, for example `work.areaM2`. */
  readonly path: string
  /** Unit of what is usual; the form may ask in another. */
  readonly unit: string
  /** Unit of the request, where it is another. */
  readonly sumsUnit?: string
  /** Taken where nothing is typed. */
  readonly usual?: Range & { readonly basis: Basis; readonly source?: string }
  /** Known without being asked: what stands where nothing is typed. */
  readonly known?: Range & { readonly basis: Basis; readonly source?: string }
  /** What the sums take where nothing is given. */
  readonly fallback?: Range
  /** May be left out of the sums. */
  readonly optional: boolean
  /** Typed in advance on the first visit: an example, not a recommendation. */
  readonly example?: number
}

const EXAMPLES: Readonly<Record<string, number>> = {
  areaM2: 10,
  lengthM: 10,
  masonryM3: 2,
  volumeL: 100,
  unitLengthMm: 300,
  unitHeightMm: 150,
  unitDepthMm: 200,
}

/** `unitLengthMm` → `unit-length`: the unit is the form's business. */
const shortName = (field: string) => kebab(field.replace(/(?:LPerM2|Mm|M2|M3|M|L)$/, ''))

/** `bulkDensity` → `bulk-density`. */
export const kebab = (name: string) =>
  name.replace(/(?<=[a-z])[A-Z]+/g, (letters) => `-${letters.toLowerCase()}`).toLowerCase()

/** What the address calls a field of a work: the first work's have no number. */
export const fieldOfWork = (name: string, work: number): string => (work === 1 ? name : `${name}-${work}`)

/** How the request names what belongs to a work. */
const pathOfWork = (work: number) => (work === 1 ? '' : `furtherWorks.${work - 2}.`)

/** The dimensions of a kind of work, for the work of that number. */
export const dimensionFields = (kind: WorkKind, work: number): AmountField[] =>
  Object.entries(workFields(kind)).map(([field, { unit, usual, fallback, whole }]) => {
    const share = unit === '1' && whole !== true
    return {
      name: fieldOfWork(shortName(field), work),
      path: `${pathOfWork(work)}work.${field}`,
      unit: share ? '%' : unit,
      ...(share && { sumsUnit: '1' }),
      optional: fallback !== undefined,
      ...(fallback && { fallback: share ? asPercent(fallback) : fallback }),
      ...(usual && !fallback && { usual: share ? asPercent(usual) : usual }),
      ...(EXAMPLES[field] !== undefined && { example: EXAMPLES[field] }),
    }
  })

/** A share as a percentage. */
export const asPercent = <R extends Range>(range: R): R => ({
  ...range,
  low: range.low * 100,
  typical: range.typical * 100,
  high: range.high * 100,
})

const practice = (low: number, typical: number, high: number) =>
  ({ low, typical, high, basis: 'practice' }) as const

/** What is lost of a work's mortar. */
export const lossField = (work: number): AmountField => ({
  name: fieldOfWork('loss', work),
  path: `${pathOfWork(work)}lossPercent`,
  unit: '%',
  usual: practice(5, 10, 15),
  optional: true,
})

/** What is on site, whatever the work. */
export const SITE_FIELDS = {
  moisture: { name: 'moisture', path: 'sandMoisturePercent', unit: '%', optional: true },
  bulking: { name: 'bulking', path: 'sandBulkingPercent', unit: '%', optional: true },
  purity: { name: 'purity', path: 'limePurityPercent', unit: '%', optional: true },
  water: { name: 'water', path: 'waterC', unit: 'C', usual: practice(8, 15, 22), optional: true },
  heap: { name: 'heap', path: 'sandC', unit: 'C', usual: practice(8, 15, 22), optional: true },
  box: { name: 'box', path: 'gaugeBoxL', unit: 'L', example: 15, optional: true },
  mixer: { name: 'mixer', path: 'mixerL', unit: 'L', example: 120, optional: true },
  hours: { name: 'hours', path: 'labour.hours', unit: 'h', optional: true },
  rate: { name: 'rate', path: 'labour.ratePerHour', unit: '1', optional: true },
} as const satisfies Record<string, AmountField>

/** Moisture of sand called damp and no more, as the method page states it, %. */
export const DAMP: Range = { low: 2, typical: 4, high: 7 }

const POWDER_PACK_KG = 25

/** Mass of a pack as sold, for each ingredient that comes in packs. */
export const packFields = (recipe: RecipeBody): AmountField[] =>
  recipe.ingredients
    .filter(({ role }) => role !== 'water')
    .map(({ material, role }) => ({
      name: `pack-${material}`,
      path: `packsKg.${material}`,
      unit: 'kg',
      optional: true,
      ...(['lime', 'pozzolan', 'cement', 'gypsum'].includes(role) && { example: POWDER_PACK_KG }),
    }))

/** Price of a pack, in whatever money the reader counts in. */
export const priceFields = (recipe: RecipeBody): AmountField[] =>
  recipe.ingredients
    .filter(({ role }) => role !== 'water')
    .map(({ material }) => ({
      name: `price-${material}`,
      path: `packPrices.${material}`,
      unit: '1',
      optional: true,
    }))

const KIND_FOR: Partial<Record<Use, WorkKind>> = {
  'bedding-rubble': 'bedding-rubble',
  'bedding-ashlar': 'bedding-ashlar',
  'bedding-brick': 'bedding-brick',
  pointing: 'pointing',
  'deep-packing': 'deep-packing',
  grout: 'grout',
  'plaster-base': 'plaster',
  'plaster-finish': 'plaster',
  'render-base': 'render',
  'render-finish': 'render',
  floor: 'floor',
  roofing: 'roof-bedding',
  infill: 'infill',
  limewash: 'limewash',
}

/** Uses that a kind of work belongs to beside those of {@link KIND_FOR}. */
const ALSO_FOR: Partial<Record<WorkKind, readonly Use[]>> = {
  'pointing-rubble': ['pointing'],
  'bedding-squared': ['bedding-rubble', 'bedding-ashlar'],
  'plaster-laths': ['plaster-base', 'plaster-finish'],
  'roof-torching': ['roofing'],
}

/** Is this work outside every use that the recipe was written for? A bare volume may be for any. */
export const isOutsideUses = ({ uses }: RecipeBody, kind: WorkKind): boolean =>
  kind !== 'volume' && !uses.some((use) => KIND_FOR[use] === kind || ALSO_FOR[kind]?.includes(use))

/** The kind of work that a recipe was written for first, of those that are not there yet. */
export const kindFor = ({ uses }: RecipeBody, there: readonly string[] = []): WorkKind =>
  uses.flatMap((use) => KIND_FOR[use] ?? []).find((kind) => !there.includes(kind)) ??
  WORK_KINDS[0] ??
  'volume'

/** The state that the recipe's lime is in, or is likeliest to come in; undefined for a recipe without lime. */
export function limeStateFor({ ingredients, method }: RecipeBody): LimeState | undefined {
  const lime = ingredients.find(({ role }) => role === 'lime')
  if (!lime) return undefined
  const stated = LIME_STATES.find((state) => state === lime.state)
  if (stated) return stated
  if (method === 'putty') return 'putty'
  return method.startsWith('hot-mixed') || method === 'sand-slaked' ? 'ground-quicklime' : 'dry-hydrate'
}
