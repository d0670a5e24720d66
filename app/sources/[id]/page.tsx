import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { content } from '#lib/content/index.ts'
import { citing } from '#lib/db/citations.ts'
import { FullCitation, shortCitation } from '../../_ui/citation.tsx'
import { Facts } from '../../_ui/facts.tsx'
import { PageHead } from '../../_ui/page-head.tsx'
import { Section } from '../../_ui/section.tsx'
import { BasisMark } from '../../_ui/source-mark.tsx'
import { words } from '../../_words/index.ts'
import { citedFrom } from './cited-from.ts'

interface Props {
  params: Promise<{ id: string }>
}

const t = words('pages')

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const source = content().sources.get((await params).id)
  return source ? { title: shortCitation(source), alternates: { canonical: `/sources/${source.id}` } } : {}
}

/** One source and all that cites it: rows, entries, materials, definitions, cautions. */
export default async function SourcePage({ params }: Props) {
  const source = content().sources.get((await params).id)
  if (!source) notFound()
  const [entries, { rows, materials, terms, cautions }] = [
    await citing({ source: source.id }),
    citedFrom(source.id),
  ]
  const nothing = [entries, rows, materials, terms, cautions].every((list) => list.length === 0)
  return (
    <>
      <PageHead title={shortCitation(source)} kicker={<a href="/sources">{t('sources.title')}</a>}>
        <p className="lead">
          <FullCitation source={source} />
        </p>
        {source.note !== undefined && <p className="facts-line">{source.note}</p>}
      </PageHead>
      <Section id="cited" title={t('source.cited')} note={t('source.citedNote')}>
        {nothing && <p>{t('source.nothing')}</p>}
        {rows.length > 0 && (
          <>
            <h3>{t('source.rows', { count: rows.length })}</h3>
            <ul>
              {rows.map((row) => (
                <li key={row.ref}>
                  <a href={`/tables/${row.ref}`}>{row.label}</a>, {row.citation.locator} ·{' '}
                  <BasisMark basis={row.basis} />
                </li>
              ))}
            </ul>
          </>
        )}
        {entries.length > 0 && (
          <>
            <h3>{t('source.entries', { count: entries.length })}</h3>
            <ul>
              {entries.map((entry) => (
                <li key={`${entry.kind}-${entry.slug}-${entry.locator}`}>
                  <a href={`/${entry.kind}s/${entry.slug}`}>{entry.title}</a>
                  {entry.locator !== null && `, ${entry.locator}`}
                </li>
              ))}
            </ul>
          </>
        )}
        {materials.length > 0 && (
          <>
            <h3>{t('source.materials', { count: materials.length })}</h3>
            <Facts
              facts={Object.fromEntries(
                materials.map(({ label, properties }) => [label, properties.join('; ')]),
              )}
            />
          </>
        )}
        {terms.length > 0 && (
          <>
            <h3>{t('source.terms', { count: terms.length })}</h3>
            <p>{terms.join('; ')}</p>
          </>
        )}
        {cautions.length > 0 && (
          <>
            <h3>{t('source.cautions', { count: cautions.length })}</h3>
            <p>{cautions.join('; ')}</p>
          </>
        )}
      </Section>
    </>
  )
}
