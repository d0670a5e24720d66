import { sourceOf } from '#lib/content/added.ts'
import { publishedBySlug } from '#lib/db/published.ts'
import { shortCitation } from './citation.tsx'

/** The name of a source that a contributor added; its bare id where it can no longer be read. */
export async function EntrySource({ id }: { id: string }) {
  const entry = await publishedBySlug('source', id, null)
  if (entry === null) return id
  return <a href={`/sources/${id}`}>{shortCitation(sourceOf(id, entry.body))}</a>
}
