import type { Metadata } from 'next'
import { content } from '#lib/content/index.ts'
import { isPaged } from '#lib/content/pages.ts'
import type { Term, VocabularyHead } from '#lib/content/types.ts'
import { alternates } from '../../_ui/alternates.ts'
import { DataTable } from '../../_ui/data-table.tsx'
import { EvidenceLink } from '../../_ui/evidence-link.tsx'
import { otherNames } from '../../_ui/label.ts'
import { lackingIn, NamesElsewhere } from '../../_ui/names-elsewhere.tsx'
import { NOT_HERE, NotHere } from '../../_ui/not-here.tsx'
import { PageHead } from '../../_ui/page-head.tsx'
import { Said, said } from '../../_ui/said.tsx'
import { isDrawn, ScaleDrawing } from '../../_ui/scale-drawing.tsx'
import { Section } from '../../_ui/section.tsx'
import { SourceText } from '../../_ui/source-mark.tsx'
import { Name } from '../../_ui/term-name.tsx'
import { words } from '../../_words/index.ts'
import { TermTree } from './tree.tsx'

interface Props {
  params: Promise<{ id: string }>
}

const t = words('library')

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const { id } = await params
  const title = said(content().vocabularyHeads.get(id) ?? {}, 'title')
  return title === undefined ? NOT_HERE : { title, alternates: alternates(`/terms/${id}`) }
}

/** One list of terms: as a tree where it is one, then each with its words in other languages. */
export default async function VocabularyPage({ params }: Props) {
  const { id } = await params
  const vocabulary = content().vocabularies.get(id)
  if (!vocabulary) return <NotHere />
  const terms = [...vocabulary.values()]
  // What has a page of its own tells the rest there.
  const hasPages = isPaged(id)
  const isLabelled = !hasPages && terms.some(({ labels }) => labels !== undefined)
  const head: VocabularyHead = content().vocabularyHeads.get(id) ?? { title: id }
  const title = said(head, 'title') ?? id
  return (
    <>
      <PageHead
        title={title}
        kicker={<a href="/terms">{t('terms.title')}</a>}
        lead={t('terms.count', { count: terms.length })}
      >
        {head.note !== undefined && (
          <p className="note">
            <Said of={head} field="note" />
          </p>
        )}
      </PageHead>
      {terms.some(({ broader }) => broader !== undefined) && (
        <Section id="tree" title={t('term.tree')} note={t('term.treeNote')}>
          <TermTree terms={terms} />
        </Section>
      )}
      <Section
        id="terms"
        title={t('term.terms')}
        note={t(hasPages ? 'term.pagesNote' : isLabelled ? 'term.termsNote' : 'term.noLabels')}
      >
        <DataTable
          label={title}
          caption={title}
          hideCaption
          stack
          columns={[
            { key: 'term', head: t('term.term'), names: true },
            // Set alone beside its term it needs no head of its own, and a phone has the width for words.
            { key: 'meaning', head: hasPages ? <span>{t('term.meaning')}</span> : t('term.meaning') },
            ...(isLabelled ? [{ key: 'elsewhere' as const, head: t('term.elsewhere') }] : []),
          ]}
          rows={terms.map((term) => ({
            key: term.id,
            id: term.id,
            cells: {
              term: isPaged(id) ? (
                <a href={`/terms/${id}/${term.id}`}>
                  <Name {...term} />
                </a>
              ) : (
                <Name {...term} />
              ),
              meaning: <Meaning vocabulary={id} term={term} />,
              elsewhere: <Elsewhere term={term} />,
            },
          }))}
        />
      </Section>
    </>
  )
}

const Meaning = ({ vocabulary, term }: { vocabulary: string; term: Term }) => (
  <>
    {isDrawn(vocabulary) && <ScaleDrawing vocabulary={vocabulary} state={term.id} />}
    <Said of={term} field="definition" />
    {vocabulary === 'families' && <EvidenceLink choices={{ family: term.id }} of="family" />}
    <AlsoCalled names={otherNames(term.also, term.labels)} />
    {term.reserved === true && <span className="note block">{t('term.reserved')}</span>}
    {!isPaged(vocabulary) && <Behind term={term} />}
  </>
)

/** Under what name a term is stored, and where its meaning comes from. */
const Behind = ({ term }: { term: Term }) => (
  <>
    <span className="note block">
      <code>{term.id}</code>
    </span>
    {term.uri !== undefined && (
      <span className="note block">
        <a href={term.uri} rel="noreferrer">
          {term.uri}
        </a>
      </span>
    )}
    {term.source !== undefined && <SourceText text={term.source} />}
  </>
)

const AlsoCalled = ({ names }: { names: readonly string[] }) =>
  names.length === 0 ? null : (
    <span className="note block">{t('term.also', { names: names.join(', ') })}</span>
  )

function Elsewhere({ term }: { term: Term }) {
  const lacking = lackingIn(term.labels)
  return (
    <>
      <NamesElsewhere english={[term.label, ...(term.also ?? [])]} names={term.labels} />
      {lacking !== undefined && (
        <span className="note block">{t('term.lacking', { languages: lacking })}</span>
      )}
    </>
  )
}
