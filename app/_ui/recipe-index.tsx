import type { RecipeSummary } from '#lib/db/recipes.ts'
import { words } from '../_words/index.ts'
import { asWritten } from './as-written.ts'
import { InventedMark } from './invented.tsx'
import { labelList, labelOf } from './label.ts'
import { StandingMark } from './standing-mark.tsx'

/** Recipes as an index: what each is, what it is for, how many walls it was watched on. */
export function RecipeIndex({ recipes }: { recipes: readonly RecipeSummary[] }) {
  const t = words('pages')
  return (
    <ul className="index">
      {recipes.map((recipe) => (
        <li key={recipe.slug}>
          <div>
            <h2 className="index-title">
              <a href={`/recipes/${recipe.slug}`} {...asWritten()}>
                {recipe.title}
              </a>
            </h2>
            <p {...asWritten()}>{recipe.summary}</p>
            <p className="facts-line">
              <StandingMark standing={recipe.standing} />
              {recipe.invented && <InventedMark />}
            </p>
          </div>
          <p className="index-side">
            {labelOf('families', recipe.family)}
            <br />
            {labelList('uses', recipe.uses)}
            <br />
            {t('recipes.cases', { count: recipe.cases })}
            {recipe.longestYears !== null && recipe.longestYears >= 1 && (
              <>
                <br />
                {t('recipes.longest', { years: Math.floor(recipe.longestYears) })}
              </>
            )}
          </p>
        </li>
      ))}
    </ul>
  )
}
