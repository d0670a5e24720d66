import { withdrawnEntry } from '#lib/db/entries.ts'
import { formatDate } from '../_words/format.ts'
import { words } from '../_words/index.ts'
import { Notice } from './notice.tsx'
import { PageHead } from './page-head.tsx'

/** What stands at the address of an entry that was taken down; null when it never was one. */
export async function WithdrawnPage({ slug, kind }: { slug: string; kind: 'recipe' | 'case' }) {
  const gone = await withdrawnEntry(slug)
  if (gone === null || gone.kind !== kind) return null
  const t = words('pages')
  return (
    <PageHead title={gone.title} kicker={<a href={`/${kind}s`}>{t(`${kind}s.title`)}</a>}>
      <Notice kind="withdrawn">
        <p>{t('entry.withdrawn', { date: formatDate(gone.at), reason: gone.words })}</p>
      </Notice>
    </PageHead>
  )
}
