import {
  COMPARED,
  COMPATIBILITY_RULES,
  type ComparedMeasure,
  type CompatibilityRule,
  MORTAR_CONTENTS,
  type MortarContent,
  type OrderRule,
  type PairRule,
  SALT_IONS,
  type SaltIon,
  type SaltRule,
  WALL_CONDITIONS,
  type WallCondition,
} from './compatibility-rules.ts'
import { attempt, type Outcome } from './fault.ts'
import { inspect } from './inspect.ts'
import type { Basis, Range } from './range.ts'

export type Measures = Readonly<Partial<Record<ComparedMeasure, Range | undefined>>>

export interface CompatibilityInput {
  readonly mortar: { readonly measures: Measures; readonly contents: readonly MortarContent[] }
  readonly unit: Measures
  readonly oldMortar: Measures
  readonly wall: {
    readonly conditions: readonly WallCondition[]
    /** % of the ion by mass of dry wall. */
    readonly salts: Readonly<Partial<Record<SaltIon, Range | undefined>>>
  }
}

/** Never more than this: no rule knows the wall. */
export type CompatibilityOutcome = 'no-conflict-found' | 'check' | 'conflict-reported'

export interface RuleFinding {
  readonly rule: string
  readonly kind: CompatibilityRule['kind']
  readonly outcome: CompatibilityOutcome
  /** The mortar's figure, or the salt's, and what it was held against; null where not given. */
  readonly figure: Range | null
  readonly against: Range | null
  readonly unit: string
  /** Figures that the rule needs and did not get; such a rule answers `check`. */
  readonly missing: readonly string[]
  readonly basis: Basis
  readonly source: string | null
}

/**
 * Holds a mortar against the units, the old mortar and the wall, rule by rule, each with its source and the
 * figures compared. There is no score and no verdict: rules that find nothing are not an approval.
 *
 * @returns faults: figures that are negative or out of order, salts over 100 %, unknown contents
 */
export function compareWithWall(
  input: CompatibilityInput,
  rules: readonly CompatibilityRule[] = COMPATIBILITY_RULES,
): Outcome<readonly RuleFinding[]> {
  return attempt(() => {
    refuseBadFigures(input)
    return rules.flatMap((rule) => {
      if (rule.kind === 'pair') return pairFinding(rule, input)
      return [rule.kind === 'salt' ? saltFinding(rule, input) : orderFinding(rule, input)]
    })
  })
}

function refuseBadFigures(input: CompatibilityInput): void {
  const check = inspect()
  const sets = { 'mortar.measures': input.mortar.measures, unit: input.unit, oldMortar: input.oldMortar }
  for (const [field, measures] of Object.entries(sets))
    for (const [measure, range] of Object.entries(measures)) {
      const unit = COMPARED[measure as ComparedMeasure]
      if (unit === undefined) check.refuse({ field: `${field}.${measure}`, code: 'unknown' })
      else if (range !== undefined) check.range(`${field}.${measure}`, range, { min: 0, unit })
    }
  for (const [ion, range] of Object.entries(input.wall.salts)) {
    if (!SALT_IONS.includes(ion as SaltIon)) check.refuse({ field: `wall.salts.${ion}`, code: 'unknown' })
    else if (range !== undefined) check.range(`wall.salts.${ion}`, range, { min: 0, max: 100, unit: '%' })
  }
  input.mortar.contents.forEach((content, i) => {
    if (!MORTAR_CONTENTS.includes(content))
      check.refuse({ field: `mortar.contents.${i}`, code: 'unknown', value: content })
  })
  input.wall.conditions.forEach((condition, i) => {
    if (!WALL_CONDITIONS.includes(condition))
      check.refuse({ field: `wall.conditions.${i}`, code: 'unknown', value: condition })
  })
  check.finish()
}

const head = (rule: CompatibilityRule) => ({
  rule: rule.id,
  kind: rule.kind,
  basis: rule.basis,
  source: rule.source ?? null,
})

function orderFinding(rule: OrderRule, input: CompatibilityInput): RuleFinding {
  const figure = input.mortar.measures[rule.measure] ?? null
  const other = (rule.against === 'unit' ? input.unit : input.oldMortar)[rule.measure] ?? null
  const missing = [
    ...(figure === null ? [`mortar.${rule.measure}`] : []),
    ...(other === null ? [`${rule.against}.${rule.measure}`] : []),
  ]
  return {
    ...head(rule),
    outcome: order(rule, figure, other),
    figure,
    against: other,
    unit: COMPARED[rule.measure],
    missing,
  }
}

/** Ranges apart in the right order: nothing found; apart in the wrong order: a conflict; else look closer. */
function order(rule: OrderRule, figure: Range | null, other: Range | null): CompatibilityOutcome {
  if (figure === null || other === null) return 'check'
  const [lower, upper] = rule.kind === 'not-above' ? [figure, other] : [other, figure]
  if (lower.high <= upper.low) return 'no-conflict-found'
  return lower.low > upper.high && rule.basis !== 'memory' ? 'conflict-reported' : 'check'
}

function saltFinding(rule: SaltRule, input: CompatibilityInput): RuleFinding {
  const figure = input.wall.salts[rule.ion] ?? null
  return {
    ...head(rule),
    outcome: figure !== null && figure.high < rule.watch ? 'no-conflict-found' : 'check',
    figure,
    against: { low: rule.watch, typical: rule.watch, high: rule.high },
    unit: '%',
    missing: figure === null ? [`wall.${rule.ion}`] : [],
  }
}

/** A pair that the mortar has no part in is left out; one it has a part in is shown even when all is well. */
function pairFinding(rule: PairRule, input: CompatibilityInput): RuleFinding[] {
  if (!rule.contents.some((content) => input.mortar.contents.includes(content))) return []
  const met = rule.conditions.some((condition) => input.wall.conditions.includes(condition))
  const outcome = met ? rule.outcome : 'no-conflict-found'
  return [{ ...head(rule), outcome, figure: null, against: null, unit: '1', missing: [] }]
}
