/** The sums, as a table of contents. Every calculation answers with an Outcome, ranges and its working. */

// What all of them speak in.
export type { Amount } from './amount.ts'
export { ASSUMED } from './assumptions.ts'
export type { Step } from './explain.ts'
export type { Fault, FaultCode, Outcome } from './fault.ts'
export type { IngredientInput, Materials, Parts } from './ingredient.ts'
// 6. The job sheet.
export { workJob } from './job.ts'
export type { JobInput, JobSheet, Method, WarningId } from './job-types.ts'
export { LIME_STATES, type LimeState } from './lime.ts'
// 1. Lime.
export { convertLime, type LimeConversion } from './lime-convert.ts'
export { PROPERTY_UNITS, type Properties, type PropertyName } from './material.ts'
// 2. Recipes.
export { comparePlausible, PLAUSIBLE } from './plausible.ts'
export { comparePractice, type PracticeComparison } from './practice.ts'
export { type Proportions, proportions, type StateProportions } from './proportions.ts'
export type { Basis, Property, Range } from './range.ts'
export { restateRecipe } from './restate.ts'
// 3. Sand.
export { bulkingByMoisture, bulkingFromJar } from './sand-bulking.ts'
export { correctMoisture } from './sand-moisture.ts'
export { leanestProportion, voidsFromDensities, voidsFromWater } from './sand-voids.ts'
export { type Slaking, slakeBatch } from './slaking.ts'
// 5. Take-off.
export { BOND_HEADERS } from './takeoff/brick.ts'
export { type TakeOff, takeOff, WORK_KINDS, type Work, type WorkKind, workFields } from './takeoff.ts'
export { convert, convertRange, shownUnit, UNITS, type Unit } from './units.ts'
export { SUMS_VERSION } from './version.ts'
// 4. Yield.
export { HANDBOOK_YIELDS, type MortarYield, yieldOf } from './yield.ts'
