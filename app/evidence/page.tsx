import type { Metadata } from 'next'
import { readBehind } from '#lib/api/evidence-behind.ts'
import { readEvidence, scopeOf } from '#lib/api/evidence-read.ts'
import { END_POINTS } from '#lib/evidence/index.ts'
import { evidenceChoices } from '#lib/search/works.ts'
import { alternates } from '../_ui/alternates.ts'
import { casesAskedOf, faultsOfChoice } from '../_ui/find/asked.ts'
import { Chips } from '../_ui/find/chips.tsx'
import { AddressFaults } from '../_ui/find/faults.tsx'
import { InventedNotice } from '../_ui/invented.tsx'
import { PageHead } from '../_ui/page-head.tsx'
import { oneOf, type Query } from '../_ui/query.ts'
import { words } from '../_words/index.ts'
import { AgreeSection } from './agree-section.tsx'
import { CasesSection, LaboratoryBehind } from './behind-section.tsx'
import { queryOf } from './compare/groups.ts'
import { CurveSection } from './curve-section.tsx'
import { EvidenceForm } from './form.tsx'
import { Honesty } from './honesty.tsx'
import { titlesOf } from './options.ts'
import { SizeSection } from './size-section.tsx'
import { DampSection, StatesSection } from './states-section.tsx'

const t = words('evidence')
/** More than these are a list of their own. */
const MOST_CASES = 10

export const generateMetadata = (): Metadata => ({ title: t('title'), alternates: alternates('/evidence') })

/** What visits show of the walls that an address asks for, counted. */
export default async function EvidencePage({ searchParams }: { searchParams: Promise<Query> }) {
  const query = await searchParams
  const { asked, faults } = casesAskedOf(query)
  const { filter, text } = asked
  const endPoint = oneOf(END_POINTS, query.end) ?? 'unit-damaged'
  const scope = scopeOf(filter, text)
  const [evidence, choices, behind] = await Promise.all([
    readEvidence(scope, [endPoint]),
    evidenceChoices(),
    readBehind(scope, MOST_CASES),
  ])
  const [figures] = evidence.endPoints
  return (
    <>
      <PageHead title={t('title')} lead={t('lead')}>
        <Honesty filters={[filter]} text={text} />
        {(evidence.invented > 0 ||
          [...behind.cases, ...behind.laboratory].some(({ invented }) => invented)) && (
          <InventedNotice page="list" />
        )}
      </PageHead>
      <AddressFaults faults={[...faults, ...faultsOfChoice('end', query, END_POINTS)]} />
      <EvidenceForm filter={filter} text={text} endPoint={endPoint} choices={choices} />
      <Chips path="/evidence" asked={asked} titles={titlesOf(choices)} />
      <p className="actions screen-only">
        {text === '' && (
          <a className="touch" href={`/evidence/compare?a=${encodeURIComponent(queryOf(filter))}`}>
            {t('links.compare')}
          </a>
        )}
        <a className="touch" href="/evidence/method">
          {t('links.method')}
        </a>
      </p>
      <SizeSection evidence={evidence} />
      {evidence.size.works > 0 && (
        <>
          <StatesSection states={evidence.states} />
          {figures && <CurveSection figures={figures} />}
          <DampSection states={evidence.states} drying={evidence.drying} />
          <AgreeSection agreement={evidence.agreement} />
        </>
      )}
      <LaboratoryBehind laboratory={behind.laboratory} filter={filter} />
      <CasesSection behind={behind} asked={{ filter, text }} />
    </>
  )
}
