import { sourceOf } from '#lib/content/added.ts'
import { publishedBySlug } from '#lib/db/published.ts'
import { citationLang, shortCitation } from './citation.tsx'

/** The name of a source that a contributor added; its bare id where it can no longer be read. */
export async function EntrySource({ id }: { id: string }) {
  const entry = await publishedBySlug('source', id, null)
  if (entry === null) return id
  const source = sourceOf(id, entry.body)
  return (
    <a href={`/sources/${id}`} {...citationLang(source, '')}>
      {shortCitation(source)}
    </a>
  )
}
