import type { KeptRecipe } from '#lib/db/kept-sheets.ts'
import { words } from '../_words/index.ts'
import { calculationNamed } from '../work-out/calculations.ts'

/** What kind of sheet it is, by its calculation; one that the site has no more stands with its id. */
export function kindOf(calculation: string): string {
  if (calculation === 'job') return words('kept')('job.kind')
  const of = calculationNamed(calculation)
  return of ? words('workOut')(`${of.page}.title`) : calculation
}

/** What the recipe of a sheet was called; that it was erased, once it was. */
export const recipeTitle = ({ title }: Pick<KeptRecipe, 'title'>): string =>
  title ?? words('kept')('erasedTitle')
