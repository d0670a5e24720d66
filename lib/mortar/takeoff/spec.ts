import type { Inspection, Limits } from '../inspect.ts'
import type { Basis, Range } from '../range.ts'

/** One dimension of a kind of work. */
export interface FieldSpec {
  /** As in the formula of the kind. */
  readonly symbol: string
  readonly unit: string
  readonly limits: Limits
  /** Taken where nothing is entered; a field without it must be entered. */
  readonly fallback?: Range
  /** What a form may start from. */
  readonly usual?: Range & { readonly basis: Basis; readonly source?: string }
  /** Only whole numbers make sense. */
  readonly whole?: boolean
}

/** A kind of work: its dimensions and the litres of mortar in place that they come to. */
export interface WorkSpec<F extends string = string> {
  readonly fields: Readonly<Record<F, FieldSpec>>
  /** In the symbols of the fields; ends in litres. */
  readonly formula: string
  /** The formula itself, on plain numbers in the fields' own units. */
  netL(d: Readonly<Record<F, number>>): number
  /** Whole bricks or stones that the work takes, where the dimensions tell. */
  unitCount?(d: Readonly<Record<F, number>>): number
  /** Notes what no single limit can express. Fields are named with `prefix` before them. */
  refuse?(d: Readonly<Record<F, Range>>, check: Inspection, prefix: string): void
}

/** Keeps the names of the fields while checking the shape. */
export const defineWork = <F extends string>(spec: WorkSpec<F>): WorkSpec<F> => spec

const none: Range = { low: 0, typical: 0, high: 0 }

const practice = (low: number, typical: number, high: number) =>
  ({ low, typical, high, basis: 'practice' }) as const

/** A length in mm above nothing. */
export const lengthMm = (
  symbol: string,
  max: number,
  usual?: readonly [number, number, number],
): FieldSpec => ({
  symbol,
  unit: 'mm',
  limits: { above: 0, max, unit: 'mm' },
  ...(usual === undefined ? {} : { usual: practice(...usual) }),
})

/** A depth in mm that may be left out. */
export const extraMm = (symbol: string, max: number): FieldSpec => ({
  symbol,
  unit: 'mm',
  limits: { min: 0, max, unit: 'mm' },
  fallback: none,
})

/** A share between nothing and all. */
export const share = (
  symbol: string,
  usual: readonly [number, number, number],
  fallback?: Range,
): FieldSpec => ({
  symbol,
  unit: '1',
  limits: { min: 0, max: 1 },
  usual: practice(...usual),
  ...(fallback === undefined ? {} : { fallback }),
})

/** The face that is worked, and the openings in it. */
export const face = {
  areaM2: { symbol: 'A', unit: 'm2', limits: { above: 0, max: 1e6, unit: 'm2' } },
  openingsM2: { symbol: 'A_o', unit: 'm2', limits: { min: 0, max: 1e6, unit: 'm2' }, fallback: none },
} as const satisfies Record<string, FieldSpec>

/** Openings must leave some of the face. */
export function refuseOpenings(
  d: { readonly areaM2: Range; readonly openingsM2: Range },
  check: Inspection,
  prefix: string,
): void {
  if (d.openingsM2.high >= d.areaM2.low)
    check.refuse({
      field: `${prefix}openingsM2`,
      code: 'too-large',
      value: d.openingsM2.high,
      limit: d.areaM2.low,
      exclusive: true,
      unit: 'm2',
    })
}

/** Share of a face of regular units that is joint; all lengths in one unit. */
export const jointShareOf = (length: number, height: number, joint: number): number =>
  1 - (length * height) / ((length + joint) * (height + joint))
