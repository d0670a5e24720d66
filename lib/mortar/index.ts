/** The sums, as a table of contents. Every calculation answers with an Outcome, ranges and its working. */

// What all of them speak in.

export type { Amount } from './amount.ts'
export { ASSUMED } from './assumptions.ts'
export type { Step } from './explain.ts'
export type { Fault, FaultCode, Outcome } from './fault.ts'
export type { IngredientInput, Materials, Parts } from './ingredient.ts'
export { LIME_STATES, type LimeState } from './lime.ts'
export { PROPERTY_UNITS, type Properties, type PropertyName } from './material.ts'
export type { Basis, Property, Range } from './range.ts'
export { convert, convertRange, shownUnit, UNITS, type Unit } from './units.ts'
export { SUMS_VERSION } from './version.ts'

// 1. Lime.

export { convertLime, type LimeConversion } from './lime-convert.ts'
export { type Slaking, slakeBatch } from './slaking.ts'

// 2. Recipes.

export { comparePlausible, PLAUSIBLE } from './plausible.ts'
export { comparePractice, type PracticeComparison } from './practice.ts'
export { type Proportions, proportions, type StateProportions } from './proportions.ts'
export { restateRecipe } from './restate.ts'

// 3. Sand.

export { bulkingByMoisture, bulkingFromJar } from './sand-bulking.ts'
export { correctMoisture } from './sand-moisture.ts'
export { leanestProportion, voidsFromDensities, voidsFromWater } from './sand-voids.ts'

// 4. Yield.

export { HANDBOOK_YIELDS, type MortarYield, yieldOf } from './yield.ts'
export { compareYields, type YieldComparison } from './yield-tables.ts'

// 5. Take-off.

export { BOND_HEADERS } from './takeoff/brick.ts'
export { type TakeOff, takeOff, WORK_KINDS, type Work, type WorkKind, workFields } from './takeoff.ts'

// 6. The job sheet.

export { workJob } from './job.ts'
export type { JobInput, JobSheet, Method, WarningId } from './job-types.ts'

// 7. Sieve.

export { type Grading, gradeSand, type SieveInput, type Size } from './sieve.ts'
export { type Blend, type BlendInput, blendSands } from './sieve-blend.ts'
export { GRADING_LIMITS, type GradingLimits } from './sieve-gradings.ts'
export { checkGrading, type LimitCheck, type RangedCurve } from './sieve-limits.ts'
export { blendToModulus } from './sieve-modulus.ts'
export { FINENESS_DEFINITIONS, SIEVE_SERIES } from './sieve-series.ts'

// 8. Sample analysis.

export { analyseSample, type SampleAnalysis, type SampleDoubt, type SampleInput } from './sample.ts'
export { type NearRow, type RatioRow, rankNearest } from './sample-nearest.ts'

// 9. Lime chemistry and certificates.

export { type CertificateRow, checkCertificate } from './certificate.ts'
export { LIME_CLASSES, type LimeClass } from './certificate-limits.ts'
export { classifyLime, type LimeChemistry } from './chemistry.ts'
export { HYDRAULIC_SCHEMES, type HydraulicClass } from './chemistry-schemes.ts'
export { burnStone } from './chemistry-stone.ts'

// 10. Cure, drying and frost.

export { type Cure, carbonate } from './cure.ts'
export { type Drying, dryEarth } from './drying.ts'
export { assessFrost, COLD_LIMITS, type FrostWindow } from './frost.ts'

// 11. Carbon.

export { type CarbonInput, type CarbonSheet, countCarbon } from './carbon.ts'

// 12. Compatibility.

export { type CompatibilityInput, compareWithWall, type RuleFinding } from './compatibility.ts'
export { COMPATIBILITY_RULES } from './compatibility-rules.ts'
export { MORTAR_CLASSES, type MortarClass } from './mortar-classes.ts'

// 13. Subsoil.

export { type JarReading, readJar, type SoilShare } from './subsoil.ts'
export { type Amendment, amendSoil } from './subsoil-blend.ts'
export { type HydrometerReading, readHydrometer } from './subsoil-hydrometer.ts'
export { limeOnSoil, type SoilLime } from './subsoil-lime.ts'
export { readShrinkage, type Shrinkage } from './subsoil-shrinkage.ts'
export { readWetSieve } from './subsoil-sieve.ts'
