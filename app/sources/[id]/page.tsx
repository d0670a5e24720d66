import type { Metadata } from 'next'
import { cache } from 'react'
import { sourceOf } from '#lib/content/added.ts'
import { content } from '#lib/content/index.ts'
import { citing } from '#lib/db/citations.ts'
import { publishedBySlug } from '#lib/db/published.ts'
import { AbsentEntry, absentEntryHead } from '../../_ui/absent-entry.tsx'
import { alternates } from '../../_ui/alternates.ts'
import { inEnglish } from '../../_ui/as-written.ts'
import { citationLang, FullCitation, shortCitation } from '../../_ui/citation.tsx'
import { PageHead } from '../../_ui/page-head.tsx'
import { type Query, wholeNumber } from '../../_ui/query.ts'
import { Section } from '../../_ui/section.tsx'
import { BasisMark } from '../../_ui/source-mark.tsx'
import { words } from '../../_words/index.ts'
import { AddedSource } from './added-source.tsx'
import { citedFrom } from './cited-from.ts'
import { CitingEntries } from './citing-entries.tsx'

interface Props {
  params: Promise<{ id: string }>
  searchParams: Promise<Query>
}

const t = words('pages')

const readSource = cache((slug: string, revision: number | undefined) =>
  publishedBySlug('source', slug, revision ?? null),
)

export async function generateMetadata({ params, searchParams }: Props): Promise<Metadata> {
  const { id } = await params
  const revision = wholeNumber((await searchParams).revision)
  const own = revision === undefined ? content().sources.get(id) : undefined
  const entry = own ? null : await readSource(id, revision)
  const source = own ?? (entry && sourceOf(id, entry.body))
  if (!source) return absentEntryHead({ kind: 'source', slug: id })
  return { title: shortCitation(source), alternates: alternates(`/sources/${id}`) }
}

/**
 * One source and all that cites it: rows, entries, materials, definitions, cautions. A source of content stands
 * before an entry of the same id, whose revisions stay readable by their numbers.
 */
export default async function SourcePage({ params, searchParams }: Props) {
  const { id } = await params
  const revision = wholeNumber((await searchParams).revision)
  const source = revision === undefined ? content().sources.get(id) : undefined
  const entries = await citing({ source: id })
  if (!source) {
    const entry = await readSource(id, revision)
    if (entry) return <AddedSource entry={entry} citing={entries} />
    return <AbsentEntry kind="source" slug={id} revision={revision} path={`/sources/${id}`} />
  }
  const { rows, materials, terms, cautions, guides } = citedFrom(source.id)
  const nothing = [entries, rows, materials, terms, cautions, guides].every((list) => list.length === 0)
  return (
    <>
      <PageHead
        title={<span {...citationLang(source)}>{shortCitation(source)}</span>}
        kicker={<a href="/sources">{t('sources.title')}</a>}
      >
        <p className="lead">
          <FullCitation source={source} />
        </p>
        {source.note !== undefined && (
          <p className="facts-line" {...inEnglish()}>
            {source.note}
          </p>
        )}
      </PageHead>
      <Section id="cited" title={t('source.cited')} note={t('source.citedNote')}>
        {nothing && <p>{t('source.nothing')}</p>}
        {rows.length > 0 && (
          <>
            <h3>{t('source.rows', { count: rows.length })}</h3>
            <ul>
              {rows.map((row) => (
                <li key={row.ref}>
                  <a href={`/tables/${row.ref}`} {...inEnglish()}>
                    {row.label}
                  </a>
                  , {row.citation.locator} · <BasisMark basis={row.basis} />
                </li>
              ))}
            </ul>
          </>
        )}
        {entries.length > 0 && (
          <>
            <h3>{t('source.entries', { count: entries.length })}</h3>
            <CitingEntries entries={entries} />
          </>
        )}
        {materials.length > 0 && (
          <>
            <h3>{t('source.materials', { count: materials.length })}</h3>
            <ul>
              {materials.map(({ label, href, properties }) => (
                <li key={href}>
                  <a href={href}>{label}</a>: {properties.join('; ')}
                </li>
              ))}
            </ul>
          </>
        )}
        <Links title={t('source.terms', { count: terms.length })} to={terms} />
        <Links title={t('source.cautions', { count: cautions.length })} to={cautions} />
        <Links title={t('source.guides', { count: guides.length })} to={guides} />
      </Section>
    </>
  )
}

const Links = ({ title, to }: { title: string; to: readonly { label: string; href: string }[] }) =>
  to.length > 0 && (
    <>
      <h3>{title}</h3>
      <ul>
        {to.map(({ label, href }) => (
          <li key={href}>
            <a href={href}>{label}</a>
          </li>
        ))}
      </ul>
    </>
  )
