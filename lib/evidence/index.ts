/** The statistics, as a table of contents. Days count from a wall's baseline visit. */

// What was seen of one wall.

export { timeToDampAgain, timeToDry } from './damp.ts'
export {
  COMPETING,
  type Competing,
  END_POINTS,
  type EndPoint,
  type Observation,
  observe,
  SCALES,
  type Scales,
} from './end-points.ts'
export {
  BASELINE_AT_MOST_DAYS,
  BASELINE_EARLY_DAYS,
  BASELINE_WITHIN_DAYS,
  type DayRange,
  ENDINGS,
  type Ending,
  type History,
  LEFT_OUT,
  type LeftOut,
  type Seen,
  type Watched,
  watch,
} from './history.ts'
export {
  type Clustered,
  type Counted,
  countWalls,
  DAYS_PER_YEAR,
  groupIntervals,
  type Interval,
} from './interval.ts'

// How long walls stood, from visits.

export { type GroupedRow, testBuildings } from './building-test.ts'
export { type Curve, type CurveOptions, type CurvePoint, curveSteps, estimateCurve } from './curve.ts'
export { type Difference, differenceOf } from './difference.ts'
export {
  type Grouped,
  type IntervalTest,
  type IntervalTestOptions,
  testIntervals,
} from './interval-test.ts'
export { boundLost, type Extremes, LOST_TO_SIGHT_DAYS, type LostRow } from './lost-to-sight.ts'
export { lacking, MIN_WALL_YEARS, MIN_WALLS } from './minimum.ts'
export { exactQuantileOf, type Quantile, quantileOf } from './quantile.ts'
export { type Filed, fileRows, type Steps, unfile } from './resample.ts'
export {
  estimateTurnbull,
  type Mass,
  type Standing,
  standingAt,
  standingsAt,
  type Turnbull,
} from './turnbull.ts'

// Events that compete.

export { type Ended, estimateExactIncidence, type IncidenceStep } from './aalen-johansen.ts'
export { type Caused, estimateIncidence, type Incidence, incidenceAt } from './incidence.ts'
export {
  estimateIncidenceCurve,
  type IncidenceCurve,
  type IncidencePoint,
  incidenceSteps,
} from './incidence-curve.ts'

// How long walls stood, from exact days.

export { estimateKaplanMeier, type Step, type Timed } from './kaplan-meier.ts'
export { type LogRank, testLogRank } from './log-rank.ts'

// Shares, and people who scored the same thing.

export { AGREEMENT_WEIGHTS, type Agreement, type AgreementWeights, cohenKappa } from './agreement.ts'
export { LEVEL } from './distributions.ts'
export { fleissKappa } from './fleiss.ts'
export { clopperPearson, type Limits, type Proportion, shareDifference, wilson } from './proportion.ts'
