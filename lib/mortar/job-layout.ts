import type { FreshPlan } from './fresh.ts'
import { PER_WORK, type PlannedWork } from './job-works.ts'
import type { LimeState } from './lime.ts'
import type { MixPlan } from './mix.ts'

/** A planned job: everything that the kernel reads, by place. */
export interface JobPlan {
  readonly mix: MixPlan
  readonly fresh: FreshPlan
  readonly works: readonly PlannedWork[]
  /** Per ingredient: the state that a lime is in on site; null for all else. */
  readonly siteStates: readonly (LimeState | null)[]
  /** Per ingredient: place of a lime's bulk density in that state, `ABSENT` where it has none. */
  readonly siteBulks: readonly number[]
  /** Is lime slaked among the sand (and not in water alone)? */
  readonly slakesInSand: boolean
  readonly moisture: number
  /** Places that are {@link ABSENT} unless entered. */
  readonly bulking: number
  readonly purity: number
  readonly firstCharge: number
  readonly waterC: number
  readonly sandC: number
}

/** Outputs before those of the ingredients, in their order. */
const JOB_OUTPUTS = [
  'netL',
  'mortarL',
  'unitCount',
  'recipeMortarL',
  'boundL',
  'freeL',
  'boiledL',
  'fromSandL',
  'fromLimeL',
  'firstChargeL',
  'likelyTotalL',
  'averageC',
  'heatKJ',
  'startC',
  'capacityKJK',
  'slakingSpareL',
  'firstPerRecipeL',
  'likelyPerRecipeL',
] as const
export type JobOutput = (typeof JOB_OUTPUTS)[number]
export const jobOutputAt = (name: JobOutput): number => JOB_OUTPUTS.indexOf(name)

/** Outputs of each ingredient: in the recipe, then on site. */
export const PER_INGREDIENT = ['quicklimeKg', 'dryKg', 'looseL', 'siteL', 'siteKg', 'bulking'] as const
export const ingredientOutputAt = (i: number): number => JOB_OUTPUTS.length + i * PER_INGREDIENT.length

/** Where the works of a job of several begin, after the ingredients. */
export const workOutputAt = ({ mix }: JobPlan): number => ingredientOutputAt(mix.ingredients.length)

/** Names of all outputs of a job, for faults. */
export const jobOutputNames = ({ mix, works }: JobPlan): string[] => [
  ...JOB_OUTPUTS,
  ...mix.ingredients.flatMap(({ index }) => PER_INGREDIENT.map((name) => `ingredients.${index}.${name}`)),
  ...(works.length === 1 ? [] : works.flatMap((_, k) => PER_WORK.map((name) => `works.${k}.${name}`))),
]
