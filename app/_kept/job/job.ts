import type { RecipeBody } from '#lib/entry/recipe.ts'
import type { JobSheet } from '#lib/mortar/job-types.ts'
import { words } from '../../_words/index.ts'
import type { Inputs } from '../../recipes/[slug]/job/read-inputs.ts'

/** A job sheet with what it was worked from. */
export interface Job {
  readonly sheet: JobSheet
  readonly recipe: RecipeBody
  readonly inputs: Inputs
}

/** What an amount of money is called, with its currency where one was named. */
export const inMoney = (label: string, money: string): string =>
  money === '' ? label : words('kept')('inMoney', { label, money })
