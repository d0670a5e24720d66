import type { ReadRecipe } from '#lib/db/recipes.ts'
import { asWritten } from '../../_ui/as-written.ts'
import { DisputedNotice } from '../../_ui/disputed.tsx'
import { InventedNotice } from '../../_ui/invented.tsx'
import { labelList, labelOf } from '../../_ui/label.ts'
import { Notice } from '../../_ui/notice.tsx'
import { PageHead } from '../../_ui/page-head.tsx'
import { addressWith } from '../../_ui/query.ts'
import { StandingMark } from '../../_ui/standing-mark.tsx'
import { Superseded } from '../../_ui/superseded.tsx'
import { WriteLinks } from '../../_ui/write-links.tsx'
import { words } from '../../_words/index.ts'

/** What a recipe is, how it stands and why, and the way to a job sheet. */
export function RecipeHead({ recipe }: { recipe: ReadRecipe }) {
  const t = words('pages')
  const { body } = recipe
  return (
    <PageHead
      title={body.title}
      kicker={<a href="/recipes">{t('recipes.title')}</a>}
      lead={body.summary}
      written
    >
      <p className="facts-line">
        <StandingMark standing={recipe.standing} />
        <span>{labelOf('families', body.family)}</span>
        <span>{labelList('uses', body.uses)}</span>
      </p>
      {body.invented && <InventedNotice page="one" />}
      <Superseded path="recipes" entry={recipe} />
      <DisputedNotice entry={recipe} />
      {recipe.standingReason !== undefined && (
        <Notice
          kind={recipe.standing === 'known-hazard' ? 'hazard' : 'caution'}
          title={labelOf('standings', recipe.standing)}
        >
          <p {...asWritten()}>{recipe.standingReason}</p>
        </Notice>
      )}
      <p className="actions facts-line">
        <a
          className={recipe.standing === 'in-use' ? 'button' : 'button button-plain'}
          href={addressWith(`/recipes/${recipe.slug}/job`, { r: recipe.revision })}
        >
          {t('recipe.job')}
        </a>
      </p>
      <WriteLinks kind="recipe" slug={recipe.slug} />
    </PageHead>
  )
}
