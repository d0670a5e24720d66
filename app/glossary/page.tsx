import { groups } from 'd3-array'
import type { Metadata } from 'next'
import { findTerms } from '#lib/content/find-terms.ts'
import { content } from '#lib/content/index.ts'
import type { GlossaryTerm } from '#lib/content/types.ts'
import { alternates } from '../_ui/alternates.ts'
import { nameOf, otherNames } from '../_ui/label.ts'
import { NamesElsewhere } from '../_ui/names-elsewhere.tsx'
import { PageHead } from '../_ui/page-head.tsx'
import { first, type Query } from '../_ui/query.ts'
import { Said } from '../_ui/said.tsx'
import { Section } from '../_ui/section.tsx'
import { Name } from '../_ui/term-name.tsx'
import { locale, words } from '../_words/index.ts'
import { FindForm, Found, MOST_ASKED } from './find.tsx'

const t = words('library')

export const generateMetadata = (): Metadata => ({
  title: t('glossary.title'),
  alternates: alternates('/glossary'),
})

/** All terms of the trade by letter, each at an address of its own, and those that go by a name asked for. */
export default async function GlossaryPage({ searchParams }: { searchParams: Promise<Query> }) {
  const asked = first((await searchParams).q)?.slice(0, MOST_ASKED)
  const terms = [...content().glossary.values()].sort((a, b) =>
    calledOf(a).localeCompare(calledOf(b), locale()),
  )
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

const calledOf = ({ term, labels }: GlossaryTerm) => nameOf(term, labels)

/** Without its accent: Árido stands under A. */
const letterOf = (term: GlossaryTerm) => calledOf(term).normalize('NFD').charAt(0).toUpperCase()

const TermLine = ({ term }: { term: GlossaryTerm }) => (
  <div id={term.id}>
    <dt>
      <dfn>
        <Name label={term.term} labels={term.labels} />
      </dfn>
      <AlsoCalled names={otherNames(term.also, term.labels)} />
    </dt>
    <dd>
      <p>
        <Said of={term} field="definition" />
      </p>
      {term.see.length > 0 && (
        <p className="note">
          {t.rich('glossary.see', {
            list: () => term.see.map((other, index) => <See key={other} id={other} isFirst={index === 0} />),
          })}
        </p>
      )}
      <NamesElsewhere english={[term.term, ...term.also]} names={term.labels} />
    </dd>
  </div>
)

const AlsoCalled = ({ names }: { names: readonly string[] }) =>
  names.length === 0 ? null : <span className="note">{t('glossary.also', { names: names.join(', ') })}</span>

const See = ({ id, isFirst }: { id: string; isFirst: boolean }) => (
  <>
    {isFirst ? '' : ', '}
    <a href={`#${id}`}>
      <GlossaryName id={id} />
    </a>
  </>
)

function GlossaryName({ id }: { id: string }) {
  const term = content().glossary.get(id)
  return term === undefined ? id : <Name label={term.term} labels={term.labels} />
}
