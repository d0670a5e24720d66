import type { Metadata } from 'next'
import { findCases, regionCounts } from '#lib/search/index.ts'
import { alternates } from '../_ui/alternates.ts'
import { casesAddress, casesAskedOf, without } from '../_ui/find/asked.ts'
import { Chips } from '../_ui/find/chips.tsx'
import { Downloads } from '../_ui/find/downloads.tsx'
import { AddressFaults } from '../_ui/find/faults.tsx'
import { NarrowForm } from '../_ui/find/narrow-form.tsx'
import { titlesOf } from '../_ui/find/titles.ts'
import { InventedNotice } from '../_ui/invented.tsx'
import { labelOf } from '../_ui/label.ts'
import { CaseMap } from '../_ui/map/case-map.tsx'
import { PageHead } from '../_ui/page-head.tsx'
import type { Query } from '../_ui/query.ts'
import { words } from '../_words/index.ts'
import { PlaceList } from './place-list.tsx'
import { clustersOf, countriesOf, regionsOf } from './places.ts'

const t = words('find')
const PATH = '/map'

export const generateMetadata = (): Metadata => ({ title: t('map.title'), alternates: alternates(PATH) })

/** Where the cases of a list are: countries of the world or, once one is chosen, its regions. */
export default async function MapPage({ searchParams }: { searchParams: Promise<Query> }) {
  const { asked, faults } = casesAskedOf(await searchParams)
  const { text, filter } = asked
  const [regions, { facets, total, exact, results }, titles] = await Promise.all([
    regionCounts({ text, filter }),
    findCases({ text, filter }),
    titlesOf(filter),
  ])
  const country = filter.country?.length === 1 ? filter.country[0] : undefined
  const places = country === undefined ? countriesOf(regions, asked) : regionsOf(regions, asked)
  const clusters = clustersOf(places)
  const title =
    country === undefined ? t('map.title') : t('map.titleOf', { country: labelOf('countries', country) })
  const unplaced = country === undefined ? 0 : places.length - clusters.length
  return (
    <>
      <PageHead title={title} lead={t('map.lead')} />
      <div className="finding">
        <NarrowForm action={PATH} asked={asked} facets={facets} faults={faults} hasSort={false} />
        <div className="finding-results">
          <AddressFaults faults={faults} />
          <Chips path={PATH} asked={asked} titles={titles} />
          <p className="facts-line" role="status">
            <span>{t(exact ? 'list.cases' : 'list.casesAbout', { count: total })}</span>
            <a href={casesAddress('/cases', asked)}>{t('map.asList')}</a>
            {country !== undefined && (
              <a
                href={casesAddress(PATH, { ...asked, filter: without(without(filter, 'country'), 'region') })}
              >
                {t('map.world')}
              </a>
            )}
          </p>
          {results.some(({ invented }) => invented) && <InventedNotice page="list" />}
          <CaseMap title={title} country={country} clusters={clusters} />
          {places.length === 0 ? <p>{t('map.none')}</p> : <PlaceList places={places} country={country} />}
          {unplaced > 0 && <p className="note">{t('map.unplaced', { count: unplaced })}</p>}
          <p className="note">{t('map.outlines')}</p>
          <Downloads list="regions" query={casesAddress('', { text, filter })} />
        </div>
      </div>
    </>
  )
}
