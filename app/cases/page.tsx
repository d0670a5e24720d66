import type { Metadata } from 'next'
import { dropping, findCases } from '#lib/search/index.ts'
import { redirect } from '../_http/redirect.ts'
import { alternates } from '../_ui/alternates.ts'
import { CaseIndex } from '../_ui/case-index.tsx'
import { casesAddress, casesAskedOf, casesChoices, choicesOf } from '../_ui/find/asked.ts'
import { Chips } from '../_ui/find/chips.tsx'
import { Downloads } from '../_ui/find/downloads.tsx'
import { AddressFaults } from '../_ui/find/faults.tsx'
import { NarrowForm } from '../_ui/find/narrow-form.tsx'
import { NothingFits } from '../_ui/find/nothing.tsx'
import { ReadAs } from '../_ui/find/read-as.tsx'
import { titlesOf } from '../_ui/find/titles.ts'
import { InventedNotice } from '../_ui/invented.tsx'
import { backToStart, NextPage } from '../_ui/next-page.tsx'
import { PageHead } from '../_ui/page-head.tsx'
import { first, type Query } from '../_ui/query.ts'
import { words } from '../_words/index.ts'

const t = words('find')
const PATH = '/cases'
const PAGE = 15

export const generateMetadata = (): Metadata => ({
  title: words('pages')('cases.title'),
  alternates: alternates(PATH),
})

/** Published cases by words and facets, in an order of one's choice. */
export default async function CasesPage({ searchParams }: { searchParams: Promise<Query> }) {
  const query = await searchParams
  // Addresses from before facets took several values had `years` for the least number of them.
  const { years, ...rest } = query
  if (years !== undefined)
    redirect(casesAddress(PATH, casesAskedOf({ minYears: first(years), ...rest }).asked))
  const { asked, faults } = casesAskedOf(query)
  const { text, filter } = asked
  const start = casesAddress(PATH, asked)
  const [found, titles] = await Promise.all([
    findCases({ ...asked, limit: PAGE }).catch(backToStart(start)),
    titlesOf(filter),
  ])
  const isNarrowed = text !== '' || choicesOf(filter).length > 0
  const dropped = found.total === 0 && isNarrowed ? await dropping(asked) : []
  return (
    <>
      <PageHead title={words('pages')('cases.title')} lead={words('pages')('cases.lead')} />
      <div className="finding">
        <NarrowForm action={PATH} asked={asked} facets={found.facets} faults={faults} />
        <div className="finding-results">
          <AddressFaults faults={[...faults, ...found.faults]} />
          <Chips path={PATH} asked={asked} titles={titles} />
          <p className="facts-line" role="status">
            <span>{t(found.exact ? 'list.cases' : 'list.casesAbout', { count: found.total })}</span>
            <a href={casesAddress('/map', { text, filter })}>{t('list.map')}</a>
            <a href={casesAddress('/evidence', { text, filter })}>{words('evidence')('links.from.walls')}</a>
          </p>
          <ReadAs read={found.read} />
          {found.results.some(({ invented }) => invented) && <InventedNotice page="list" />}
          {found.total === 0 && isNarrowed ? (
            <NothingFits path={PATH} asked={asked} dropped={dropped} titles={titles} />
          ) : (
            <CaseIndex cases={found.results} />
          )}
          <NextPage path={PATH} choices={casesChoices(asked)} after={asked.after} next={found.next} />
          <Downloads list="cases" query={start.slice(PATH.length)} />
        </div>
      </div>
    </>
  )
}
