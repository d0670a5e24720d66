import type { FieldFault } from '#lib/errors.ts'
import type { Range } from '#lib/mortar/range.ts'
import { convertRange } from '#lib/mortar/units.ts'
import type { ReadField } from './read-inputs.ts'

/** The amount in the request's own unit: as typed, or as is usual. */
export function requested({
  read,
  usual,
  unit,
  sumsUnit = unit,
  askedUnit,
}: ReadField): number | Range | undefined {
  const amount = read.amount ? convertRange(read.amount, askedUnit, unit) : usual && bare(usual)
  if (!amount || read.fault) return undefined
  const { low, typical, high } = sumsUnit === unit ? amount : convertRange(amount, unit, sumsUnit)
  return low === high ? typical : { low, typical, high }
}

const bare = ({ low, typical, high }: Range): Range => ({ low, typical, high })

/** Puts a value where its path points: `work.areaM2` into `work`, `furtherWorks.0.work.areaM2` into the second. */
export function place(draft: object, path: string, value: number | Range | undefined): void {
  if (value === undefined) return
  const keys = path.split('.')
  const last = keys.pop() ?? path
  const at = keys.reduce<object>((inner, key) => {
    const there: unknown = Reflect.get(inner, key)
    if (typeof there === 'object' && there !== null) return there
    const made = {}
    Reflect.set(inner, key, made)
    return made
  }, draft)
  Reflect.set(at, last, value)
}

/** A field that could not be read is not also missing. */
export function merge(typing: readonly FieldFault[], schema: readonly FieldFault[]): FieldFault[] {
  const known = new Set(typing.map(({ field }) => field))
  return [...typing, ...schema.filter(({ field }) => ![...known].some((one) => field.startsWith(one)))]
}
