/**
 * The works of the record in memory, beside the documents that find keeps: what figures about walls are counted from.
 * `selectWorks` narrows them by a filter; the rest counts what it selected.
 */
export { type Choice, type ChoiceOf, evidenceChoices, watchedRows } from './works-choices.ts'
export type { SharedVisit } from './works-columns.ts'
export {
  inBoth,
  REPORTED,
  type Reported,
  type Reports,
  reportsOf,
  type SetAside,
  type Size,
  type StateCount,
  setAsideOf,
  sharedVisitsOf,
  sizeOf,
  statesOf,
} from './works-count.ts'
export {
  type CauseRow,
  type FateRow,
  type Fates,
  fatesOf,
  type GroupRow,
  groupsOf,
  type Watching,
  type WeatherRow,
  weatherOf,
} from './works-ends.ts'
export type { Grain } from './works-grain.ts'
export { type Scope, type Selected, selectWorks } from './works-scope.ts'
export { TRAITS, type Trait, type TraitCount, traitsOf } from './works-traits.ts'
