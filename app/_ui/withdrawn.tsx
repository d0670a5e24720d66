import { withdrawnEntry } from '#lib/db/entries.ts'
import type { WrittenKind } from '#lib/entry/body.ts'
import { formatDate } from '../_words/format.ts'
import { words } from '../_words/index.ts'
import { Notice } from './notice.tsx'
import { PageHead } from './page-head.tsx'

/** Kinds of entry that have a page each; a visit is read on its case's. */
export type PageKind = Exclude<WrittenKind, 'visit'>

const LISTS: Readonly<Record<PageKind, () => string>> = {
  recipe: () => words('pages')('recipes.title'),
  case: () => words('pages')('cases.title'),
  material: () => words('library')('materials.title'),
  source: () => words('pages')('sources.title'),
  row: () => words('added')('row.title'),
}

/** What stands at the address of an entry that was taken down; null when it never was one. */
export async function WithdrawnPage({ slug, kind }: { slug: string; kind: PageKind }) {
  const gone = await withdrawnEntry(slug)
  if (gone === null || gone.kind !== kind) return null
  const t = words('pages')
  return (
    <PageHead
      title={gone.erased ? t('entry.erasedTitle') : gone.title}
      kicker={<a href={`/${kind}s`}>{LISTS[kind]()}</a>}
    >
      <Notice kind="withdrawn">
        <p>
          {t(gone.erased ? 'entry.erased' : 'entry.withdrawn', {
            date: formatDate(gone.at),
            reason: gone.words,
          })}
        </p>
      </Notice>
    </PageHead>
  )
}
