import type { RecipeBody } from '#lib/entry/recipe.ts'
import { asWritten } from '../../../_ui/as-written.ts'
import { labelOf } from '../../../_ui/label.ts'
import { Notice } from '../../../_ui/notice.tsx'
import { StateProportionsTable } from '../../../_ui/state-proportions.tsx'
import { workedProportions } from '../../../_ui/worked.ts'
import { words } from '../../../_words/index.ts'

/** Why a recipe that is not in use gives no sheet by itself, with the proportions it does give. */
export function StandingNotice({ recipe }: { recipe: RecipeBody }) {
  if (recipe.standing === 'in-use') return null
  const t = words('job')
  const worked = workedProportions(recipe.ingredients)
  return (
    <>
      <Notice kind={recipe.standing === 'known-hazard' ? 'hazard' : 'caution'} title={t('standing.title')}>
        <p>{t('standing.lead', { standing: labelOf('standings', recipe.standing) })}</p>
        <p {...asWritten()}>{recipe.standingReason}</p>
      </Notice>
      {worked.ok && (
        <div className="job-proportions">
          <StateProportionsTable proportions={worked.value} ingredients={recipe.ingredients} />
        </div>
      )}
    </>
  )
}
