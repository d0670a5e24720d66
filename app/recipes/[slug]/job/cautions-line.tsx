import { content } from '#lib/content/index.ts'
import type { Caution } from '#lib/content/types.ts'
import type { RecipeBody } from '#lib/entry/recipe.ts'
import type { JobSheet } from '#lib/mortar/job-types.ts'
import { cautionWords } from '../../../_ui/caution-words.ts'
import { cautionsFor } from '../../../_ui/cautions.tsx'
import { words } from '../../../_words/index.ts'

/** The cautions that a job and its materials call for, as they stand on site. */
export function jobCautions(sheet: JobSheet, recipe: RecipeBody): Caution[] {
  // The state on site decides, not the one that the recipe was measured in.
  const ofMaterials = cautionsFor({
    materials: recipe.ingredients.map(({ material }, index) => ({
      material,
      state: sheet.ingredients.find((one) => one.index === index)?.state,
    })),
  })
  const ids = new Set([...sheet.cautions, ...ofMaterials.map(({ id }) => id)])
  return [...ids].flatMap((id) => content().cautions.get(id) ?? [])
}

/** The cautions of the job and of its materials in their short form: they print with the sheet. */
export function JobCautions({ sheet, recipe, slug }: { sheet: JobSheet; recipe: RecipeBody; slug: string }) {
  const t = words('job')
  return (
    <div className="job-cautions">
      <h3>{t('sheet.cautions')}</h3>
      <ul>
        {jobCautions(sheet, recipe).map((caution) => {
          const { title, notice } = cautionWords(caution)
          return (
            <li key={caution.id}>
              <strong>{title}.</strong> {notice}
            </li>
          )
        })}
      </ul>
      <p className="note">
        <a href={`/recipes/${slug}#method`}>{t('sheet.cautionsNote')}</a>
      </p>
    </div>
  )
}
