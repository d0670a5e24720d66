import type { Metadata } from 'next'
import { content } from '#lib/content/index.ts'
import { listLibrary } from '#lib/db/library.ts'
import { AddedSection } from '../_ui/added-section.tsx'
import { alternates } from '../_ui/alternates.ts'
import { citationLang, FullCitation, shortCitation } from '../_ui/citation.tsx'
import { backToStart } from '../_ui/next-page.tsx'
import { PageHead } from '../_ui/page-head.tsx'
import { first, type Query } from '../_ui/query.ts'
import { compareTitles } from '../_words/format.ts'
import { words } from '../_words/index.ts'

const t = words('pages')

export const generateMetadata = (): Metadata => ({
  title: t('sources.title'),
  alternates: alternates('/sources'),
})

/** The bibliography, by author or title, each with the number of rows that rest on it. */
export default async function SourcesPage({ searchParams }: { searchParams: Promise<Query> }) {
  const { sources, rows } = content()
  const cited = new Map<string, number>()
  for (const { citation } of rows.values()) cited.set(citation.source, (cited.get(citation.source) ?? 0) + 1)
  const list = [...sources.values()]
    .map((source) => ({ source, short: shortCitation(source) }))
    .sort((a, b) => compareTitles(a.short, b.short))
  const { entries, next } = await listLibrary('source', { after: first((await searchParams).after) }).catch(
    backToStart('/sources'),
  )
  return (
    <>
      <PageHead title={t('sources.title')} lead={t('sources.lead', { count: list.length })} />
      <ul className="index">
        {list.map(({ source, short }) => (
          <li key={source.id}>
            <div>
              <h2 className="index-title">
                <a href={`/sources/${source.id}`} {...citationLang(source)}>
                  {short}
                </a>
              </h2>
              <p className="note">
                <FullCitation source={source} />
              </p>
            </div>
            <p className="index-side">{t('sources.cited', { count: cited.get(source.id) ?? 0 })}</p>
          </li>
        ))}
      </ul>
      <AddedSection kind="source" entries={entries} next={next} />
    </>
  )
}
