import { faultsOf } from '#lib/api/faults.ts'
import { type JobRequest, jobRequest } from '#lib/api/job-request.ts'
import type { RecipeBody } from '#lib/entry/recipe.ts'
import { LIME_STATES } from '#lib/entry/terms.ts'
import type { FieldFault } from '#lib/errors.ts'
import type { Range } from '#lib/mortar/range.ts'
import { WORK_KINDS, type WorkKind } from '#lib/mortar/takeoff.ts'
import { convert, convertRange, shownUnit } from '#lib/mortar/units.ts'
import { type AmountRead, readAmount, type Typed } from '../../../_http/form.ts'
import { formatNumber } from '../../../_words/format.ts'
import {
  type AmountField,
  DAMP,
  dimensionFields,
  kindFor,
  limeStateFor,
  packFields,
  priceFields,
  SANDS,
  type Sand,
  SITE_FIELDS,
  SYSTEMS,
  type System,
} from './fields.ts'

/** A field with what was read in it, in the unit it was asked in. */
export interface ReadField extends AmountField {
  readonly askedUnit: string
  readonly read: AmountRead
}

/** The form as it stands: every choice and figure, and the request that they make. */
export interface Inputs {
  /** Nothing was sent yet, or the fields of another kind were asked for: examples are typed in advance. */
  readonly fresh: boolean
  readonly system: System
  readonly kind: WorkKind
  readonly sand: Sand
  readonly limeState: (typeof LIME_STATES)[number] | undefined
  readonly dimensions: readonly ReadField[]
  readonly site: Readonly<Record<keyof typeof SITE_FIELDS, ReadField>>
  readonly packs: readonly ReadField[]
  readonly prices: readonly ReadField[]
  readonly money: string
  readonly reason: string
  readonly overridden: boolean
  readonly request: JobRequest | undefined
  /** What is wrong with what was typed, by the name that the request gives each field. */
  readonly faults: readonly FieldFault[]
}

/** Reads the job form of a recipe from the address. */
export function readInputs(typed: Typed, slug: string, recipe: RecipeBody, revision: number): Inputs {
  const fresh = typed.use === undefined || typed.show !== undefined
  const system = pick(SYSTEMS, typed.units) ?? 'metric'
  const kind = pick(WORK_KINDS, typed.use) ?? kindFor(recipe)
  const sand = pick(SANDS, typed.sand) ?? 'damp'
  const limeState = pick(LIME_STATES, typed.lime) ?? limeStateFor(recipe)
  const read = (field: AmountField) => readField(field, typed, system, fresh)
  const dimensions = dimensionFields(kind).map(read)
  const site = Object.fromEntries(
    Object.entries(SITE_FIELDS).map(([name, field]) => [name, read(field)]),
  ) as Inputs['site']
  const packs = packFields(recipe).map(read)
  const prices = priceFields(recipe).map(read)
  const asked = [...dimensions, ...Object.values(site), ...packs, ...prices].filter(
    ({ name }) => sand === 'measured' || (name !== 'moisture' && name !== 'bulking'),
  )
  const overridden = recipe.standing !== 'in-use' && typed.override === 'yes'
  const typing = asked.flatMap(({ path, read }) => (read.fault ? [{ ...read.fault, field: path }] : []))
  const draft = {
    recipe: slug,
    revision,
    work: { kind },
    ...(limeState && { limeState }),
    ...(sand === 'damp' && { sandMoisturePercent: DAMP }),
    ...(overridden && { override: { reason: typed.reason ?? '' } }),
  }
  typing.push(...unknownChoices(typed))
  const unmeasured = sand === 'measured' && !fresh && !site.moisture.read.text && !site.bulking.read.text
  if (unmeasured) typing.push({ field: site.moisture.path, code: 'required' })
  for (const field of asked) place(draft, field.path, requested(field))
  const parsed = jobRequest.safeParse(draft)
  return {
    fresh,
    system,
    kind,
    sand,
    limeState,
    dimensions,
    site,
    packs,
    prices,
    money: typed.money ?? '',
    reason: typed.reason ?? '',
    overridden,
    request: parsed.success && typing.length === 0 ? parsed.data : undefined,
    faults: parsed.success ? typing : merge(typing, faultsOf(parsed.error.issues, draft)),
  }
}

/** The fields that choose from a list; the address may hold anything. */
const CHOICES = { use: WORK_KINDS, lime: LIME_STATES, sand: SANDS, units: SYSTEMS } as const
export type Choice = keyof typeof CHOICES
export const isChoice = (name: string): name is Choice => Object.hasOwn(CHOICES, name)

/** A choice that is not offered is never taken for another. */
const unknownChoices = (typed: Typed): FieldFault[] =>
  Object.entries(CHOICES).flatMap(([field, list]) => {
    const value = typed[field]
    return value === undefined || pick<string>(list, value) ? [] : [{ field, code: 'unknown', value }]
  })

const pick = <T extends string>(list: readonly T[], value: string | undefined): T | undefined =>
  list.find((one) => one === value)

function readField(field: AmountField, typed: Typed, system: System, fresh: boolean): ReadField {
  const askedUnit = shownUnit(field.unit, system)
  const read = readAmount(typed, field.name)
  if (!fresh || read.text !== '' || field.example === undefined) return { ...field, askedUnit, read }
  const example = Number(convert(field.example, field.unit, askedUnit).toPrecision(2))
  return {
    ...field,
    askedUnit,
    read: { text: formatNumber(example), amount: { low: example, typical: example, high: example } },
  }
}

/** The amount in the request's own unit: as typed, or as is usual. */
function requested({ read, usual, unit, askedUnit, path }: ReadField): number | Range | undefined {
  const amount = read.amount ? convertRange(read.amount, askedUnit, unit) : usual && bare(usual)
  if (!amount || read.fault) return undefined
  const shares = unit === '%' && path.startsWith('work.')
  const { low, typical, high } = shares ? convertRange(amount, '%', '1') : amount
  return low === high ? typical : { low, typical, high }
}

const bare = ({ low, typical, high }: Range): Range => ({ low, typical, high })

/** Puts a value where its path points: `work.areaM2` into `work`. */
function place(draft: object, path: string, value: number | Range | undefined): void {
  if (value === undefined) return
  const [group, ...rest] = path.split('.')
  if (group === undefined) return
  if (rest.length === 0) Reflect.set(draft, group, value)
  else {
    const inner: unknown = Reflect.get(draft, group) ?? {}
    Reflect.set(draft, group, { ...(inner as object), [rest.join('.')]: value })
  }
}

/** A field that could not be read is not also missing. */
function merge(typing: readonly FieldFault[], schema: readonly FieldFault[]): FieldFault[] {
  const known = new Set(typing.map(({ field }) => field))
  return [...typing, ...schema.filter(({ field }) => ![...known].some((one) => field.startsWith(one)))]
}
