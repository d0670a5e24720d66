import { type Cure, carbonate } from '#lib/mortar/cure.ts'
import { coefficientFrom } from '#lib/mortar/cure-coefficient.ts'
import { type Drying, dryEarth } from '#lib/mortar/drying.ts'
import type { Step } from '#lib/mortar/explain.ts'
import type { Outcome } from '#lib/mortar/fault.ts'
import { assessFrost, COLD_LIMITS, type FrostWindow } from '#lib/mortar/frost.ts'
import type { Range } from '#lib/mortar/range.ts'
import type { Calculation, Given } from '../../_ui/workshop/calculation.ts'
import { ASKED, type Asked, FACES, fieldsOf, KNOWN_FROM, LIMITS } from './fields.ts'
import { show } from './show.ts'

/** Depths by age with the coefficient behind them, nights after the work, or days of drying. */
export type CureFound =
  | {
      readonly what: 'depth'
      readonly k: Range
      readonly measured: boolean
      readonly cure: Cure
      readonly steps: readonly Step[]
    }
  | { readonly what: 'frost'; readonly frost: FrostWindow; readonly protectDays: Range }
  | { readonly what: 'drying'; readonly drying: Drying }

/** What becomes of new work: how far air has got into it, which nights endanger it, when earth is dry. */
export const cure: Calculation<CureFound> = {
  name: 'cure',
  sources: ['rilem-carbonation-2023', 'nps-brief-2'],
  fields: fieldsOf,
  work: (given) => WORK[given.choice('what', ASKED)](given),
  show,
}

const WORK: Readonly<Record<Asked, (given: Given) => Outcome<CureFound>>> = {
  depth(given) {
    const measured = given.choice('from', KNOWN_FROM) === 'measured'
    const found: Outcome<{ k: Range; steps: readonly Step[] }> = measured
      ? coefficientFrom({ depthMm: given.need('measured-depth'), days: given.need('measured-age') })
      : { ok: true, value: { k: given.need('k'), steps: [] } }
    if (!found.ok) return found
    const { k, steps } = found.value
    const outcome = carbonate({
      kMmPerRootDay: k,
      depthMm: given.need('thickness'),
      faces: facesOf(given),
      ages: given.list('ages').flatMap((age) => age ?? []),
    })
    if (!outcome.ok) return outcome
    const cure = outcome.value
    return { ok: true, value: { what: 'depth', k, measured, cure, steps: [...steps, ...cure.steps] } }
  },
  frost(given) {
    const limit = given.choice('limit', LIMITS)
    const protectDays = given.need('protect')
    const outcome = assessFrost({
      dailyLowsC: given.list('lows'),
      protectDays,
      coldLimitC: COLD_LIMITS.find(({ id }) => id === limit)?.celsius ?? given.need('limit-own').typical,
      marginK: given.need('margin').typical,
    })
    return outcome.ok ? { ok: true, value: { what: 'frost', frost: outcome.value, protectDays } } : outcome
  },
  drying(given) {
    const outcome = dryEarth({
      thicknessMm: given.need('thickness'),
      densityKgM3: given.need('density'),
      moistureAtStart: given.need('wet'),
      moistureAtEnd: given.need('dry'),
      lossKgM2Day: given.need('loss'),
      faces: facesOf(given),
    })
    return outcome.ok ? { ok: true, value: { what: 'drying', drying: outcome.value } } : outcome
  },
}

const facesOf = (given: Given) => (given.choice('faces', FACES) === '2' ? 2 : 1)
