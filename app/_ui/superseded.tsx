import { words } from '../_words/index.ts'
import { Notice } from './notice.tsx'

/** Where the entries of a kind have their pages. */
export type EntryPath = 'recipes' | 'cases' | 'materials' | 'sources' | 'rows'

/** Says of an earlier revision that another has taken its place; nothing of the one published now. */
export function Superseded(props: {
  path: EntryPath
  entry: { readonly slug: string; readonly revision: number; readonly latest: number }
}) {
  const { slug, revision, latest } = props.entry
  if (revision === latest) return null
  return (
    <Notice kind="note">
      <p>
        {words('pages').rich('entry.superseded', {
          revision,
          latest,
          link: (label) => <a href={`/${props.path}/${slug}`}>{label}</a>,
        })}
      </p>
    </Notice>
  )
}
