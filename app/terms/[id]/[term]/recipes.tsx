import { titlesOf } from '../../../_ui/find/titles.ts'
import { Section } from '../../../_ui/section.tsx'
import { words } from '../../../_words/index.ts'

const SHOWN = 8

/** The recipes that most of a term's cases used. */
export async function TermRecipes(props: {
  used: readonly { id: string; count: number }[]
  /** Where all recipes for it are listed. */
  all: string | undefined
}) {
  const t = words('find')
  const used = props.used.filter(({ count }) => count > 0).slice(0, SHOWN)
  const titles = await titlesOf({ recipe: used.map(({ id }) => id) })
  return (
    <Section id="recipes" title={t('term.recipes')} note={t('term.recipesNote')}>
      {used.length === 0 && <p>{t('term.noRecipes')}</p>}
      <ul>
        {used.map(({ id, count }) => (
          <li key={id}>
            <a href={`/recipes/${id}`}>{titles.get(id) ?? id}</a> {t('list.cases', { count })}
          </li>
        ))}
      </ul>
      {props.all !== undefined && (
        <p>
          <a className="touch" href={props.all}>
            {t('term.allRecipes')}
          </a>
        </p>
      )}
    </Section>
  )
}
