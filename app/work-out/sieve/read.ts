import type { FieldFault } from '#lib/errors.ts'
import { gradeSand, type SieveMass } from '#lib/mortar/sieve.ts'
import type { CurvePoint } from '#lib/mortar/sieve-curve.ts'
import { GRADING_LIMITS, type GradingLimits } from '#lib/mortar/sieve-gradings.ts'
import type { RangedCurve } from '#lib/mortar/sieve-limits.ts'
import type { Given, Refused } from '../../_ui/workshop/calculation.ts'
import { faultsAt, refuse } from '../../_ui/workshop/faults-at.ts'
import { COUNTS, TARGETS } from './choices.ts'
import { NAMED_STACKS, openingsOf, STACKS } from './stacks.ts'

/** Sieves with what stayed on them, coarsest first; a stack of one's own may be typed in any order. */
export function sievesOf(given: Given): SieveMass[] | Refused {
  const stack = given.choice('stack', STACKS)
  if (stack !== 'own')
    return openingsOf(stack).map((openingMm) => ({
      openingMm,
      retainedG: given.need(`on-${openingMm}`).typical,
    }))
  const openings = numbersOf(given, 'openings')
  const masses = numbersOf(given, 'masses')
  const twice = openings.find((opening, i) => openings.indexOf(opening) !== i)
  if (twice !== undefined) return refuse({ field: 'openings', code: 'repeated', value: twice })
  if (masses.length !== openings.length) return refuse(countFault('masses', masses.length, openings.length))
  return openings
    .map((openingMm, i) => ({ openingMm, retainedG: masses[i] as number }))
    .sort((a, b) => b.openingMm - a.openingMm)
}

/** The curve of every sand of a blend, or all that is wrong with any of them. */
export function sandsOf(given: Given): RangedCurve[] | Refused {
  const openings = openingsOf(given.choice('stack', NAMED_STACKS))
  const balanceG = given.need('balance').typical
  const names = Array.from({ length: Number(given.choice('sands', COUNTS)) }, (_, s) => `sand-${s + 1}`)
  const faults: FieldFault[] = []
  const curves = names.flatMap((name): RangedCurve[] => {
    const masses = numbersOf(given, name)
    if (masses.length <= openings.length) {
      faults.push(countFault(name, masses.length, openings.length + 1))
      return []
    }
    const outcome = faultsAt(
      gradeSand({
        sieves: openings.map((openingMm, i) => ({ openingMm, retainedG: masses[i] as number })),
        panG: masses[openings.length] as number,
        balanceG,
      }),
      [[/^(?!balanceG).*$/, name]],
    )
    if (outcome.ok) return [outcome.value.rows]
    faults.push(...outcome.faults)
    return []
  })
  return faults.length > 0 ? refuse(...faults) : curves
}

interface Target {
  readonly reached: readonly CurvePoint[]
  readonly unreached: readonly number[]
  readonly limits: GradingLimits | undefined
}

/** What should pass: the middle between named limits where the stack reaches, or figures of one's own. */
export function targetOf(given: Given): Target | Refused {
  const openings = openingsOf(given.choice('stack', NAMED_STACKS))
  const limits = limitsNamed(given.choice('target', TARGETS))
  if (limits) {
    const [coarsest = 0, finest = 0] = [openings[0], openings.at(-1)]
    const inStack = (mm: number) => finest <= mm && mm <= coarsest
    return {
      limits,
      reached: limits.passing
        .filter(({ openingMm }) => inStack(openingMm))
        .map(({ openingMm, low, high }) => ({ openingMm, passing: (low + high) / 2 })),
      unreached: limits.passing.flatMap(({ openingMm }) => (inStack(openingMm) ? [] : [openingMm])),
    }
  }
  const passing = given.list('passing')
  if (passing.length !== openings.length)
    return refuse(countFault('passing', passing.length, openings.length))
  const reached = openings.flatMap((openingMm, i) => {
    const share = passing[i] ?? null
    return share === null ? [] : [{ openingMm, passing: share }]
  })
  if (reached.length === 0) return refuse({ field: 'passing', code: 'empty' })
  const rises = reached.find(({ passing: share }, i) => share > (reached[i - 1]?.passing ?? 100))
  if (rises) return refuse({ field: 'passing', code: 'inconsistent', value: rises.passing })
  return { limits: undefined, reached, unreached: [] }
}

const numbersOf = (given: Given, name: string): number[] => given.list(name).map((value) => value ?? 0)

/** A row of figures that has to go with another has not as many. */
const countFault = (field: string, value: number, limit: number): FieldFault => ({
  field,
  code: value < limit ? 'too-short' : 'too-long',
  value,
  limit,
})

/** A grading of the sums by its id. */
export const limitsNamed = (id: string): GradingLimits | undefined =>
  GRADING_LIMITS.find((one) => one.id === id)
