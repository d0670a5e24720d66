import { groups } from 'd3-array'
import type { Metadata } from 'next'
import { findTerms } from '#lib/content/find-terms.ts'
import { content } from '#lib/content/index.ts'
import type { GlossaryTerm } from '#lib/content/types.ts'
import { alternates } from '../_ui/alternates.ts'
import { asWritten } from '../_ui/as-written.ts'
import { NamesElsewhere } from '../_ui/names-elsewhere.tsx'
import { PageHead } from '../_ui/page-head.tsx'
import { first, type Query } from '../_ui/query.ts'
import { Section } from '../_ui/section.tsx'
import { words } from '../_words/index.ts'
import { FindForm, Found, MOST_ASKED } from './find.tsx'

const t = words('library')

export const generateMetadata = (): Metadata => ({
  title: t('glossary.title'),
  alternates: alternates('/glossary'),
})

/** All terms of the trade by letter, each at an address of its own, and those that go by a name asked for. */
export default async function GlossaryPage({ searchParams }: { searchParams: Promise<Query> }) {
  const asked = first((await searchParams).q)?.slice(0, MOST_ASKED)
  const terms = [...content().glossary.values()].sort((a, b) => a.term.localeCompare(b.term, 'en'))
  const letters = groups(terms, letterOf)
  return (
    <>
      <PageHead title={t('glossary.title')} lead={t('glossary.lead', { count: terms.length })}>
        <ul className="nav letters" aria-label={t('glossary.letters')}>
          {letters.map(([letter]) => (
            <li key={letter}>
              <a href={`#letter-${letter}`}>{letter}</a>
            </li>
          ))}
        </ul>
        <FindForm asked={asked} />
      </PageHead>
      {asked !== undefined && <Found terms={findTerms(terms, asked)} asked={asked} />}
      {letters.map(([letter, list]) => (
        <Section key={letter} id={`letter-${letter}`} title={letter}>
          <dl className="terms">
            {list.map((term) => (
              <TermLine key={term.id} term={term} />
            ))}
          </dl>
        </Section>
      ))}
    </>
  )
}

const letterOf = ({ term }: GlossaryTerm) => term.charAt(0).toUpperCase()

const TermLine = ({ term: { id, term, also, definition, see, labels } }: { term: GlossaryTerm }) => (
  <div id={id}>
    <dt>
      <dfn {...asWritten()}>{term}</dfn>
      {also.length > 0 && <span className="note">{t('glossary.also', { names: also.join(', ') })}</span>}
    </dt>
    <dd>
      <p {...asWritten()}>{definition}</p>
      {see.length > 0 && (
        <p className="note">
          {t.rich('glossary.see', {
            list: () => see.map((other, index) => <See key={other} id={other} isFirst={index === 0} />),
          })}
        </p>
      )}
      {labels !== undefined && <NamesElsewhere names={labels} />}
    </dd>
  </div>
)

const See = ({ id, isFirst }: { id: string; isFirst: boolean }) => (
  <>
    {isFirst ? '' : ', '}
    <a href={`#${id}`}>{content().glossary.get(id)?.term ?? id}</a>
  </>
)
