import { type Amount, toRange } from './amount.ts'
import { digits, type Step } from './explain.ts'
import { attempt, type Outcome } from './fault.ts'
import { type Inspection, inspect } from './inspect.ts'
import type { Range } from './range.ts'
import { spreadVector } from './spread.ts'
import { beddingBrick } from './takeoff/brick.ts'
import { coatsOnLaths, coatsOnSolid, floor, limewash } from './takeoff/coats.ts'
import { deepPacking, grout, infill } from './takeoff/filling.ts'
import { pointing, pointingRubble } from './takeoff/pointing.ts'
import { roofBedding, roofTorching } from './takeoff/roof.ts'
import type { FieldSpec, WorkSpec } from './takeoff/spec.ts'
import { beddingAshlar, beddingRubble, beddingSquared } from './takeoff/stone.ts'
import { volume } from './takeoff/volume.ts'
import { type Variables, variables } from './variables.ts'

/** Every kind of work that can be taken off. */
const WORKS = {
  volume,
  pointing,
  'pointing-rubble': pointingRubble,
  'bedding-brick': beddingBrick,
  'bedding-rubble': beddingRubble,
  'bedding-squared': beddingSquared,
  'bedding-ashlar': beddingAshlar,
  'deep-packing': deepPacking,
  grout,
  plaster: coatsOnSolid,
  'plaster-laths': coatsOnLaths,
  render: coatsOnSolid,
  floor,
  infill,
  'roof-bedding': roofBedding,
  'roof-torching': roofTorching,
  limewash,
} as const
export type WorkKind = keyof typeof WORKS
export const WORK_KINDS = Object.keys(WORKS) as WorkKind[]

type FieldOf<K extends WorkKind> = keyof (typeof WORKS)[K]['fields']
/** A kind of work and its dimensions, each a number or a range; what has a fallback may be left out. */
export type Work = {
  [K in WorkKind]: { readonly kind: K } & { readonly [F in FieldOf<K>]?: Amount }
}[WorkKind]

export interface TakeOff {
  /** Mortar in place, before loss. */
  readonly netL: Range
  /** Bricks in place; null for kinds that don't tell. */
  readonly unitCount: Range | null
  readonly steps: readonly Step[]
}

/** The dimensions of a kind of work, for forms and descriptions. */
export const workFields = (kind: WorkKind): Readonly<Record<string, FieldSpec>> => WORKS[kind].fields

/** Litres of mortar in place for one piece of work. Faults are named by the dimension. */
export const takeOff = (work: Work): Outcome<TakeOff> =>
  attempt(() => {
    const check = inspect()
    const vars = variables()
    const plan = planWork(work, vars, check, '')
    check.finish()
    const outputs = ['netL', 'unitCount']
    const [netL, unitCount] = spreadVector(vars.names, vars.ranges, outputs, (x, out) => {
      out[0] = plan.netL(x)
      out[1] = plan.unitCount(x)
    }) as [Range, Range]
    return {
      netL,
      unitCount: plan.spec.unitCount === undefined ? null : unitCount,
      steps: plan.explain(netL),
    }
  })

/** A piece of work whose dimensions have places among the variables. */
export interface WorkPlan {
  readonly spec: WorkSpec
  netL(x: Float64Array): number
  unitCount(x: Float64Array): number
  /** The dimensions and the formula, ending in `netL`. */
  explain(netL: Range): Step[]
}

/** Checks a piece of work and gives its dimensions places; notes all faults on the way. */
export function planWork(work: Work, vars: Variables, check: Inspection, prefix: string): WorkPlan {
  const spec: WorkSpec = Object.hasOwn(WORKS, work.kind) ? WORKS[work.kind] : volume
  if (!Object.hasOwn(WORKS, work.kind))
    check.refuse({ field: `${prefix}kind`, code: 'unknown', value: String(work.kind) })
  const given = work as Readonly<Record<string, unknown>>
  for (const name of Object.keys(given))
    if (name !== 'kind' && !Object.hasOwn(spec.fields, name))
      check.refuse({ field: `${prefix}${name}`, code: 'unknown' })
  const ranges: Record<string, Range> = {}
  for (const [name, field] of Object.entries(spec.fields))
    ranges[name] = readField(`${prefix}${name}`, given[name] as Amount | undefined, field, check)
  spec.refuse?.(ranges, check, prefix)

  const d: Record<string, number> = {}
  const uncertain: { name: string; place: number }[] = []
  for (const [name, range] of Object.entries(ranges)) {
    const place = vars.add(`${prefix}${name}`, range)
    d[name] = range.typical
    if (range.low < range.high) uncertain.push({ name, place })
  }
  const load = (x: Float64Array) => {
    for (const { name, place } of uncertain) d[name] = x[place] as number
    return d
  }
  return {
    spec,
    netL: (x) => spec.netL(load(x)),
    unitCount: (x) => spec.unitCount?.(load(x)) ?? 0,
    explain: (netL) => explainWork(spec, ranges, netL),
  }
}

const UNKNOWN: Range = { low: Number.NaN, typical: Number.NaN, high: Number.NaN }

function readField(field: string, given: Amount | undefined, spec: FieldSpec, check: Inspection): Range {
  if (given === undefined) {
    if (spec.fallback !== undefined) return spec.fallback
    check.refuse({ field, code: 'empty', unit: spec.unit })
    return UNKNOWN
  }
  const range = toRange(given)
  check.range(field, range, spec.limits)
  if (spec.whole === true && [range.low, range.typical, range.high].some((value) => !Number.isInteger(value)))
    check.refuse({ field, code: 'inconsistent', value: range.typical, unit: spec.unit })
  return range
}

function explainWork(spec: WorkSpec, ranges: Readonly<Record<string, Range>>, netL: Range): Step[] {
  const fields = Object.entries(spec.fields)
  const values = new Map(fields.map(([name, { symbol }]) => [symbol, (ranges[name] as Range).typical]))
  return [
    ...fields.map(([name, { symbol, unit }]) => ({
      symbol,
      means: `work.${name}`,
      formula: '',
      numbers: '',
      result: ranges[name] as Range,
      unit,
    })),
    {
      symbol: 'V_net',
      means: 'netVolume',
      formula: spec.formula,
      numbers: putNumbers(spec.formula, values),
      result: netL,
      unit: 'L',
    },
  ]
}

/** The formula with each symbol replaced by its number. */
const putNumbers = (formula: string, values: ReadonlyMap<string, number>): string =>
  formula.replaceAll(/[\p{L}][\p{L}\d]*(?:_[\p{L}\d]+)?/gu, (symbol) => {
    const value = values.get(symbol)
    return value === undefined ? symbol : digits(value)
  })
