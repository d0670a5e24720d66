import { faultsOf } from '#lib/api/faults.ts'
import { type JobRequest, jobRequest } from '#lib/api/job-request.ts'
import type { RecipeBody } from '#lib/entry/recipe.ts'
import { LIME_STATES } from '#lib/entry/terms.ts'
import type { FieldFault } from '#lib/errors.ts'
import { MOST_WORKS } from '#lib/mortar/job-works.ts'
import { WORK_KINDS, type WorkKind } from '#lib/mortar/takeoff.ts'
import { convert, shownUnit } from '#lib/mortar/units.ts'
import { type AmountRead, readAmount, type Typed } from '../../../_http/form.ts'
import { askedSystem, SYSTEMS, type System } from '../../../_ui/systems.ts'
import { formatNumber } from '../../../_words/format.ts'
import { pick, unknownChoices } from './choices.ts'
import {
  type AmountField,
  DAMP,
  dimensionFields,
  fieldOfWork,
  kindFor,
  limeStateFor,
  lossField,
  packFields,
  priceFields,
  SANDS,
  type Sand,
  SITE_FIELDS,
} from './fields.ts'
import { merge, place, requested } from './make-request.ts'
import { assumedFields, ownFields } from './own-figures.ts'
import { switchUnits } from './switch-units.ts'
import { asksLive, wantsExamples } from './wish.ts'
import { arrangeWorks } from './works.ts'

/** A field with what was read in it, in the unit it was asked in. */
export interface ReadField extends AmountField {
  readonly askedUnit: string
  readonly read: AmountRead
  /** What stands in it is an example, which nobody typed. */
  readonly exampled?: true
}

/** One piece of work as the form has it. */
export interface WorkRead {
  /** From 1. */
  readonly number: number
  readonly kind: WorkKind
  readonly dimensions: readonly ReadField[]
  readonly loss: ReadField
}

/** The form as it stands: every choice and figure, and the request that they make. */
export interface Inputs {
  /** Nothing was sent yet, or other fields were asked for: blank ones may have examples typed in advance. */
  readonly fresh: boolean
  /** Were any? */
  readonly exampled: boolean
  readonly system: System
  /** What was typed, under the names that the works have now. */
  readonly typed: Typed
  readonly works: readonly WorkRead[]
  readonly sand: Sand
  readonly limeState: (typeof LIME_STATES)[number] | undefined
  readonly site: Readonly<Record<keyof typeof SITE_FIELDS, ReadField>>
  readonly packs: readonly ReadField[]
  readonly prices: readonly ReadField[]
  /** One's own figures, by material, and of what is assumed. */
  readonly own: readonly { readonly material: string; readonly fields: readonly ReadField[] }[]
  readonly assumed: readonly ReadField[]
  readonly money: string
  readonly reason: string
  readonly overridden: boolean
  readonly request: JobRequest | undefined
  /** What is wrong with what was typed, by the name that the request gives each field. */
  readonly faults: readonly FieldFault[]
}

/** Reads the job form of a recipe from the address, in the units that it asks to change to. */
export function readInputs(sent: Typed, slug: string, recipe: RecipeBody, revision: number): Inputs {
  const to = askedSystem(sent)
  const { show, ...typed } = sent
  const asTyped = to && readForm(typed, slug, recipe, revision)
  const switched = asTyped && switchUnits(asTyped.typed, allFields(asTyped), to)
  return readForm(
    switched ? { ...switched, ...(show !== undefined && { show }) } : sent,
    slug,
    recipe,
    revision,
  )
}

function readForm(sent: Typed, slug: string, recipe: RecipeBody, revision: number): Inputs {
  const untouched = sent.use === undefined
  const fresh = untouched || (sent.show !== undefined && !asksLive(sent.show))
  const { typed, count, added } = arrangeWorks(sent, MOST_WORKS, (there) => kindFor(recipe, there))
  const system = pick(SYSTEMS, typed.units) ?? 'metric'
  const sand = pick(SANDS, typed.sand) ?? 'damp'
  const limeState = pick(LIME_STATES, typed.lime) ?? limeStateFor(recipe)
  const read = (field: AmountField) => readField(field, typed, system, untouched)
  const works = Array.from({ length: count }, (_, k): WorkRead => {
    const number = k + 1
    const kind = pick(WORK_KINDS, typed[fieldOfWork('use', number)]) ?? kindFor(recipe)
    const asExample = untouched || wantsExamples(sent.show, number) || number === added
    return {
      number,
      kind,
      dimensions: dimensionFields(kind, number).map((field) => readField(field, typed, system, asExample)),
      loss: read(lossField(number)),
    }
  })
  const site = Object.fromEntries(
    Object.entries(SITE_FIELDS).map(([name, field]) => [name, read(field)]),
  ) as Inputs['site']
  const packs = packFields(recipe).map(read)
  const prices = priceFields(recipe).map(read)
  const own = ownFields(recipe).map(({ material, fields }) => ({ material, fields: fields.map(read) }))
  const assumed = assumedFields().map(read)
  const fields = allFields({ works, site, packs, prices, own, assumed })
  const asked = fields.filter(
    ({ name }) => sand === 'measured' || (name !== 'moisture' && name !== 'bulking'),
  )
  const overridden = recipe.standing !== 'in-use' && typed.override === 'yes'
  const typing = asked.flatMap(({ path, read }) => (read.fault ? [{ ...read.fault, field: path }] : []))
  const draft = {
    recipe: slug,
    revision,
    work: { kind: works[0]?.kind },
    ...(works.length > 1 && { furtherWorks: works.slice(1).map(({ kind }) => ({ work: { kind } })) }),
    ...(limeState && { limeState }),
    ...(sand === 'damp' && { sandMoisturePercent: DAMP }),
    ...(overridden && { override: { reason: typed.reason ?? '' } }),
  }
  typing.push(...unknownChoices(typed, works.length))
  const unmeasured = sand === 'measured' && !site.moisture.read.text && !site.bulking.read.text
  if (unmeasured) typing.push({ field: site.moisture.path, code: 'required' })
  for (const field of asked) place(draft, field.path, requested(field))
  const parsed = jobRequest.safeParse(draft)
  return {
    fresh,
    exampled: fields.some((field) => field.exampled),
    typed,
    system,
    works,
    sand,
    limeState,
    site,
    packs,
    prices,
    own,
    assumed,
    money: typed.money ?? '',
    reason: typed.reason ?? '',
    overridden,
    request: parsed.success && typing.length === 0 ? parsed.data : undefined,
    faults: parsed.success ? typing : merge(typing, faultsOf(parsed.error.issues, draft)),
  }
}

/** Every figure that the form asks for, in its order. */
export const allFields = ({ works, site, packs, prices, own, assumed }: Fields): ReadField[] => [
  ...works.flatMap(({ dimensions, loss }) => [...dimensions, loss]),
  ...Object.values(site),
  ...packs,
  ...prices,
  ...own.flatMap(({ fields }) => fields),
  ...assumed,
]
type Fields = Pick<Inputs, 'works' | 'site' | 'packs' | 'prices' | 'own' | 'assumed'>

/** What the form would send as it stands: what was typed, and the examples that stand in it by themselves. */
export function asItWouldBeSent(inputs: Inputs): Typed {
  const { typed, works } = inputs
  const { show: _, in: __, ...kept } = typed
  const kinds = works.map(({ number, kind }) => [fieldOfWork('use', number), kind] as const)
  const texts = allFields(inputs).flatMap(({ name, read }) =>
    read.text === '' ? [] : [[name, read.text] as const],
  )
  return { ...Object.fromEntries([...kinds, ...texts]), ...kept }
}

function readField(field: AmountField, typed: Typed, system: System, asExample: boolean): ReadField {
  const askedUnit = shownUnit(field.unit, system)
  const read = readAmount(typed, field.name)
  if (!asExample || read.text !== '' || field.example === undefined) return { ...field, askedUnit, read }
  const example = Number(convert(field.example, field.unit, askedUnit).toPrecision(2))
  return {
    ...field,
    askedUnit,
    read: { text: formatNumber(example), amount: { low: example, typical: example, high: example } },
    exampled: true,
  }
}
