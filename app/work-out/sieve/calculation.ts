import { areBlendSumsHere, blendSums, fetchBlendSums } from '#app/blend-sums.ts'
import type { Outcome } from '#lib/mortar/fault.ts'
import type { Range } from '#lib/mortar/range.ts'
import { type Grading, gradeSand } from '#lib/mortar/sieve.ts'
import type { Blend } from '#lib/mortar/sieve-blend.ts'
import type { CurvePoint } from '#lib/mortar/sieve-curve.ts'
import type { GradingLimits } from '#lib/mortar/sieve-gradings.ts'
import { checkGrading, type LimitCheck, type RangedCurve } from '#lib/mortar/sieve-limits.ts'
import { blendToModulus } from '#lib/mortar/sieve-modulus.ts'
import { chosenIn } from '../../_ui/workshop/asked.ts'
import type { Calculation, Given, Refused } from '../../_ui/workshop/calculation.ts'
import { faultsAt, refuse } from '../../_ui/workshop/faults-at.ts'
import { ASKED, type Asked, HELD } from './choices.ts'
import { fieldsOf } from './fields.ts'
import { limitsNamed, sandsOf, sievesOf, targetOf } from './read.ts'
import { show } from './show.ts'

/** A grading held against limits, a blend with the curves it was made of, or two shares. */
export type SieveFound =
  | {
      readonly what: 'grade'
      readonly grading: Grading
      readonly held: Held | undefined
    }
  | {
      readonly what: 'blend'
      readonly blend: Blend
      readonly sands: readonly RangedCurve[]
      readonly target: readonly CurvePoint[]
      readonly held: Held | undefined
      /** Sieves of the target that the stack says nothing of. */
      readonly unreached: readonly number[]
    }
  | { readonly what: 'modulus'; readonly fineShare: number; readonly within: boolean }

/** A curve with the limits it is held against and how it stands to them. */
export interface Held {
  readonly limits: GradingLimits
  readonly check: LimitCheck
}

type Tried = Outcome<SieveFound> | Refused

/** Sieves and masses to a grading, and sands to a blend. */
export const sieve: Calculation<SieveFound> = {
  name: 'sieve',
  uses: ({ id }) => id === 'sand-sharp',
  sources: ['astm-c136', 'astm-c144', 'bs-1200-1976'],
  fields: fieldsOf,
  later: {
    isNeeded: (typed) => chosenIn<Asked>(typed, 'what', ASKED, 'grade') === 'blend',
    areHere: areBlendSumsHere,
    fetch: fetchBlendSums,
  },
  work: (given) => WORK[given.choice('what', ASKED)](given),
  show,
}

const WORK: Readonly<Record<Asked, (given: Given) => Tried>> = {
  grade(given) {
    const sieves = sievesOf(given)
    if ('ok' in sieves) return sieves
    const outcome = gradeSand({
      sieves,
      panG: given.need('pan').typical,
      washedOutG: given.amount('washed')?.typical,
      startG: given.amount('start')?.typical,
      balanceG: given.need('balance').typical,
    })
    if (!outcome.ok)
      return faultsAt(
        outcome,
        given.chosen('stack') === 'own' ? OWN_PLACES : [[/^(?:sieves|totalG)$/, 'pan']],
      )
    const held = heldAgainst(outcome.value.rows, limitsNamed(given.choice('limits', HELD)))
    return held && 'ok' in held ? held : { ok: true, value: { what: 'grade', grading: outcome.value, held } }
  },
  blend(given) {
    const sands = sandsOf(given)
    if ('ok' in sands) return sands
    const target = targetOf(given)
    if ('ok' in target) return target
    const { reached, unreached, limits } = target
    const outcome = blendSums()({
      sands: sands.map((curve, s) => ({ curve, bulkDensityKgM3: given.need(`density-${s + 1}`) })),
      target: reached,
    })
    if (!outcome.ok) return faultsAt(outcome, [])
    const held = heldAgainst(outcome.value.rows, limits)
    if (held && 'ok' in held) return held
    return {
      ok: true,
      value: { what: 'blend', blend: outcome.value, sands, target: reached, held, unreached },
    }
  },
  modulus(given) {
    const [fine, coarse, wanted] = (['fine', 'coarse', 'wanted'] as const).map(
      (name) => given.need(name).typical,
    ) as [number, number, number]
    const outcome = blendToModulus(fine, coarse, wanted)
    if (!outcome.ok) return outcome
    return {
      ok: true,
      value: { what: 'modulus', fineShare: outcome.value, within: fine <= wanted && wanted <= coarse },
    }
  },
}

const OWN_PLACES = [
  [/^.*openingMm$/, 'openings'],
  [/^(?:sieves|totalG).*$/, 'masses'],
] as const

function heldAgainst(
  rows: readonly { readonly openingMm: number; readonly passing: Range }[],
  limits: GradingLimits | undefined,
): Held | Refused | undefined {
  if (!limits) return undefined
  const outcome = checkGrading(rows, limits)
  return outcome.ok ? { limits, check: outcome.value } : refuse(...outcome.faults)
}
