import type { Ingredient } from '#lib/entry/recipe.ts'
import { DataTable } from '../../_ui/data-table.tsx'
import { partsText, stateLabel } from '../../_ui/ingredients.tsx'
import { labelOf, materialLabel } from '../../_ui/label.ts'
import { Written } from '../../_ui/written.tsx'
import { words } from '../../_words/index.ts'

/** What goes in, in the author's own parts and measures. */
export function IngredientTable({ ingredients }: { ingredients: readonly Ingredient[] }) {
  const t = words('pages')
  const noted = ingredients.some(({ note }) => note !== undefined)
  return (
    <DataTable
      label={t('recipe.stated')}
      caption={t('recipe.stated')}
      hideCaption
      stack
      columns={[
        { key: 'material', head: t('recipe.material'), names: true },
        { key: 'parts', head: t('recipe.parts'), tight: true },
        { key: 'by', head: t('recipe.measured'), tight: true },
        { key: 'state', head: t('recipe.state') },
        ...(noted ? [{ key: 'note' as const, head: t('recipe.note') }] : []),
      ]}
      rows={ingredients.map((one, index) => ({
        key: `${index}-${one.material}`,
        cells: {
          material: (
            <>
              <a href={`/materials/${one.material}`}>{materialLabel(one.material)}</a>
              <span className="note block">{labelOf('roles', one.role)}</span>
            </>
          ),
          parts: partsText(one.parts),
          by: words('common')(`measure.${one.by}`),
          state: stateLabel(one.state),
          note: one.note && <Written>{one.note}</Written>,
        },
      }))}
    />
  )
}
