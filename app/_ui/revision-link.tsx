import { recipeBySlug } from '#lib/db/recipes.ts'
import { words } from '../_words/index.ts'

/** A fixed revision of a recipe by its title; its bare address where it can no longer be read. */
export async function RevisionLink({ address }: { address: string }) {
  const [slug = '', number = ''] = address.split('@')
  const recipe = await recipeBySlug(slug, Number(number))
  if (recipe === null) return address
  return (
    <a href={`/recipes/${slug}?revision=${number}`}>
      {words('pages')('recipe.revisionOf', { title: recipe.body.title, revision: number })}
    </a>
  )
}
