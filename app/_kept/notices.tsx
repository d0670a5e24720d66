import type { Withdrawn } from '#lib/db/entries.ts'
import type { KeptRecipe, KeptSheet } from '#lib/db/kept-sheets.ts'
import type { ReadRecipe } from '#lib/db/recipes.ts'
import { asWritten } from '../_ui/as-written.ts'
import { InventedNotice } from '../_ui/invented.tsx'
import { labelOf } from '../_ui/label.ts'
import { Notice } from '../_ui/notice.tsx'
import { formatDate } from '../_words/format.ts'
import { words } from '../_words/index.ts'
import { recipeTitle } from './kinds.ts'

const t = words('kept')

/** What became of a sheet's recipe since it was kept. On top, on paper too: whoever works from the sheet must know. */
export const KeptNotices = ({
  kept,
  withdrawn,
  recipe,
}: {
  kept: KeptSheet
  withdrawn: Withdrawn | null
  /** As it is published now. */
  recipe: ReadRecipe | null
}) => (
  <>
    {withdrawn && kept.recipe && <WithdrawnNotice withdrawn={withdrawn} recipe={kept.recipe} />}
    {kept.erased && <ErasedNotice {...kept.erased} />}
    {recipe && recipe.standing !== 'in-use' && <StandingNotice recipe={recipe} />}
    {kept.recipe?.invented === true && <InventedNotice page="one" />}
  </>
)

/** What was taken out of the sheet, and why. */
const ErasedNotice = ({ at, words: reason }: { at: Date; words: string }) => (
  <Notice kind="note" title={t('one.erased', { date: formatDate(at) })}>
    <p>{t('one.erasedWhy', { reason })}</p>
  </Notice>
)

const WithdrawnNotice = ({ withdrawn, recipe }: { withdrawn: Withdrawn; recipe: KeptRecipe }) => (
  <Notice kind="withdrawn" title={t('one.withdrawn', { date: formatDate(withdrawn.at) })}>
    <p>
      {withdrawn.erased
        ? t('one.withdrawnErased', { reason: withdrawn.words })
        : t('one.withdrawnWhy', { title: recipeTitle(recipe), reason: withdrawn.words })}
    </p>
  </Notice>
)

/** That the recipe stands otherwise today than a reader may think, and why. */
const StandingNotice = ({ recipe: { standing, standingReason } }: { recipe: ReadRecipe }) => (
  <Notice
    kind={standing === 'known-hazard' ? 'hazard' : 'caution'}
    title={t('one.standing', { standing: labelOf('standings', standing) })}
  >
    <p {...asWritten()}>{standingReason}</p>
  </Notice>
)
