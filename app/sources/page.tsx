import type { Metadata } from 'next'
import { content } from '#lib/content/index.ts'
import { FullCitation, shortCitation } from '../_ui/citation.tsx'
import { PageHead } from '../_ui/page-head.tsx'
import { compareTitles } from '../_words/format.ts'
import { words } from '../_words/index.ts'

const t = words('pages')

export const metadata: Metadata = { title: t('sources.title'), alternates: { canonical: '/sources' } }

/** The bibliography, by author or title, each with the number of rows that rest on it. */
export default function SourcesPage() {
  const { sources, rows } = content()
  const cited = new Map<string, number>()
  for (const { citation } of rows.values()) cited.set(citation.source, (cited.get(citation.source) ?? 0) + 1)
  const list = [...sources.values()]
    .map((source) => ({ source, short: shortCitation(source) }))
    .sort((a, b) => compareTitles(a.short, b.short))
  return (
    <>
      <PageHead title={t('sources.title')} lead={t('sources.lead', { count: list.length })} />
      <ul className="index">
        {list.map(({ source, short }) => (
          <li key={source.id}>
            <div>
              <h2 className="index-title">
                <a href={`/sources/${source.id}`}>{short}</a>
              </h2>
              <p className="note">
                <FullCitation source={source} />
              </p>
            </div>
            <p className="index-side">{t('sources.cited', { count: cited.get(source.id) ?? 0 })}</p>
          </li>
        ))}
      </ul>
    </>
  )
}
