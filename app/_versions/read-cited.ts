import { GUEST } from '#lib/access/actor.ts'
import { authorsBehind } from '#lib/db/authors.ts'
import { publishedBySlug } from '#lib/db/published.ts'
import { type EntryHead, entryHead } from '#lib/db/versions.ts'
import { readSettings } from '#lib/env.ts'
import { namesOf } from '../_ui/author.ts'
import { words } from '../_words/index.ts'
import { versionPath } from './address.ts'
import type { Cited } from './citation-forms.ts'

/** What a citation of a published version needs; null where there is no such version to cite. */
export async function readCited(
  slug: string,
  revision: number | undefined,
): Promise<{ entry: EntryHead; cited: Cited } | null> {
  const entry = await entryHead(GUEST, slug)
  const found = entry && (await publishedBySlug(entry.kind, slug, revision ?? null))
  if (!entry || !found) return null
  const keys = await authorsBehind(found.entryId, found.revision)
  const nameOf = await namesOf(keys)
  const { publishedAt, digest } = found
  const title =
    'title' in found.body
      ? found.body.title
      : words('review')('cite.visit', { title: entry.title, date: found.body.on })
  return {
    entry,
    cited: {
      ...{ slug, revision: found.revision, title, authors: keys.map(nameOf), publishedAt, digest },
      address: `${readSettings().siteUrl}${versionPath(slug, found.revision)}`,
    },
  }
}
