import type { Metadata } from 'next'
import { content } from '#lib/content/index.ts'
import { isPaged, type PagedVocabulary } from '#lib/content/pages.ts'
import type { Term } from '#lib/content/types.ts'
import type { CaseFilter } from '#lib/db/case-filter.ts'
import { faringOf } from '#lib/db/faring.ts'
import { findCases } from '#lib/search/index.ts'
import { alternates } from '../../../_ui/alternates.ts'
import { EvidenceLink } from '../../../_ui/evidence-link.tsx'
import { FaringTable } from '../../../_ui/find/faring-table.tsx'
import { InventedNotice } from '../../../_ui/invented.tsx'
import { termName } from '../../../_ui/label.ts'
import { NOT_HERE, NotHere } from '../../../_ui/not-here.tsx'
import { PageHead } from '../../../_ui/page-head.tsx'
import { addressWith } from '../../../_ui/query.ts'
import { Said, said } from '../../../_ui/said.tsx'
import { Section } from '../../../_ui/section.tsx'
import { Name } from '../../../_ui/term-name.tsx'
import { unitPairs } from '../../../_ui/unit-tree.ts'
import { words } from '../../../_words/index.ts'
import { TermCases } from './cases.tsx'
import { TermFigures } from './figures.tsx'
import { TermRecipes } from './recipes.tsx'
import { TermFacts } from './term-facts.tsx'

interface Props {
  params: Promise<{ id: string; term: string }>
}

const t = words('find')
const SHOWN = 5

/** The facet that the terms of a vocabulary are values of. */
const FACETS = { units: 'unit', 'wall-types': 'wall' } as const satisfies Record<PagedVocabulary, string>

const termAt = (vocabulary: string, id: string): Term | undefined =>
  isPaged(vocabulary) ? content().vocabularies.get(vocabulary)?.get(id) : undefined

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const { id, term } = await params
  const found = termAt(id, term)
  return found ? { title: termName(found), alternates: alternates(`/terms/${id}/${term}`) } : NOT_HERE
}

/** One kind of stone, brick, earth or wall: what it is, its figures, its cases, what was used and how that fared. */
export default async function TermPage({ params }: Props) {
  const { id: vocabulary, term: id } = await params
  const term = termAt(vocabulary, id)
  if (!term || !isPaged(vocabulary)) return <NotHere />
  const facet = FACETS[vocabulary]
  const filter: CaseFilter = { [facet]: [id] }
  const [found, faring] = await Promise.all([
    findCases({ filter, limit: SHOWN }),
    faringOf(filter, unitPairs()),
  ])
  return (
    <>
      <PageHead
        title={<Name {...term} />}
        kicker={
          <a href={`/terms/${vocabulary}`}>
            {said(content().vocabularyHeads.get(vocabulary) ?? {}, 'title')}
          </a>
        }
        lead={<Said of={term} field="definition" />}
      >
        {(found.results.some(({ invented }) => invented) ||
          faring.families.some(({ invented }) => invented > 0)) && <InventedNotice page="list" />}
        <p className="facts-line">
          <a className="touch" href={addressWith('/like', { [facet]: id })}>
            {t('term.like')}
          </a>
          <a className="touch" href={addressWith('/evidence', { [facet]: id })}>
            {t('term.evidence')}
          </a>
        </p>
      </PageHead>
      <TermFacts vocabulary={vocabulary} term={term} />
      {vocabulary === 'units' && <TermFigures term={term} />}
      <TermCases found={found} href={addressWith('/cases', { [facet]: id })} />
      {found.total > 0 && (
        <Section id="fared" title={t('term.fared')} note={t('term.faredNote')}>
          <FaringTable faring={faring} caption={t('term.fared')} />
          <EvidenceLink choices={{ [facet]: id }} of="unit" />
        </Section>
      )}
      <TermRecipes
        used={found.facets.recipe}
        all={vocabulary === 'units' ? addressWith('/recipes', { unit: id }) : undefined}
      />
    </>
  )
}
