import type { Metadata } from 'next'
import { content } from '#lib/content/index.ts'
import { citing } from '#lib/db/citations.ts'
import { FullCitation, shortCitation } from '../../_ui/citation.tsx'
import { InventedMark } from '../../_ui/invented.tsx'
import { NOT_HERE, NotHere } from '../../_ui/not-here.tsx'
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
  return source
    ? { title: shortCitation(source), alternates: { canonical: `/sources/${source.id}` } }
    : NOT_HERE
}

/** One source and all that cites it: rows, entries, materials, definitions, cautions. */
export default async function SourcePage({ params }: Props) {
  const source = content().sources.get((await params).id)
  if (!source) return <NotHere />
  const entries = await citing({ source: source.id })
  const { rows, materials, terms, cautions, guides } = citedFrom(source.id)
  const nothing = [entries, rows, materials, terms, cautions, guides].every((list) => list.length === 0)
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
                  {entry.locator !== null && `, ${entry.locator}`} {entry.invented && <InventedMark />}
                </li>
              ))}
            </ul>
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
