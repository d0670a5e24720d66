import { words } from '../_words/index.ts'
import { WrittenIn } from './written.tsx'

/** A fixed revision of a recipe by its title; its bare address where it can no longer be read. */
export function RevisionLink({ address, title }: { address: string; title: string | undefined }) {
  const [slug = '', revision = ''] = address.split('@')
  if (title === undefined) return address
  return (
    <a href={`/recipes/${slug}?revision=${revision}`}>
      <WrittenIn say={(text) => words('pages')('recipe.revisionOf', { title: text, revision })}>
        {title}
      </WrittenIn>
    </a>
  )
}
