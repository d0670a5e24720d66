import type { Metadata } from 'next'
import { askedLanguage } from '#app/asked.ts'
import { FOUND_KINDS } from '#lib/entry/facets.ts'
import { droppingWords, findAll } from '#lib/search/index.ts'
import { alternates } from '../_ui/alternates.ts'
import { faultsOfChoice } from '../_ui/find/asked.ts'
import { Downloads } from '../_ui/find/downloads.tsx'
import { AddressFaults } from '../_ui/find/faults.tsx'
import { ReadAs } from '../_ui/find/read-as.tsx'
import { SearchField } from '../_ui/find/search-field.tsx'
import { InventedNotice } from '../_ui/invented.tsx'
import { backToStart, NextPage } from '../_ui/next-page.tsx'
import { PageHead } from '../_ui/page-head.tsx'
import { addressWith, first, oneOf, type Query } from '../_ui/query.ts'
import { words } from '../_words/index.ts'
import { FoundList } from './found-list.tsx'
import { Kinds } from './kinds.tsx'
import { NothingFound } from './nothing-found.tsx'

const t = words('find')
const PATH = '/find'
const PAGE = 20

export const generateMetadata = (): Metadata => ({ title: t('search.title'), alternates: alternates(PATH) })

/** One search over everything that has a page; each result says why it is there. */
export default async function FindPage({ searchParams }: { searchParams: Promise<Query> }) {
  const query = await searchParams
  const text = (first(query.q) ?? '').trim()
  const kind = oneOf(FOUND_KINDS, query.kind)
  const after = first(query.after)
  const choices = { q: text || undefined, kind }
  const start = addressWith(PATH, choices)
  const asked = { text, kind, after, limit: PAGE, language: askedLanguage() }
  const found = text === '' ? undefined : await findAll(asked).catch(backToStart(start))
  const dropped = found?.total === 0 ? await droppingWords({ text, kind }) : []
  return (
    <>
      <PageHead title={t('search.title')} lead={t('search.lead')} />
      <form className="filter" method="get" action={PATH}>
        <div className="narrow-line">
          <SearchField text={text} label={t('search.all')} hint={t('search.hint')} />
          <button className="button" type="submit">
            {t('search.show')}
          </button>
        </div>
        {kind !== undefined && <input type="hidden" name="kind" value={kind} />}
      </form>
      <div className="finding-results">
        {found === undefined ? (
          <p>
            {t.rich('search.start', {
              like: (inner) => <a href="/like">{inner}</a>,
              map: (inner) => <a href="/map">{inner}</a>,
            })}
          </p>
        ) : (
          <>
            <Kinds text={text} kind={kind} counts={found.counts} />
            <p className="facts-line" role="status">
              {t(found.exact ? 'search.found' : 'search.foundAbout', { count: found.total })}
            </p>
            <AddressFaults faults={[...faultsOfChoice('kind', query, FOUND_KINDS), ...found.faults]} />
            <ReadAs read={found.read} />
            {found.results.some(({ invented }) => invented) && <InventedNotice page="list" />}
            {found.total === 0 && <NothingFound text={text} kind={kind} dropped={dropped} />}
            <FoundList pages={found.results} />
            <NextPage path={PATH} choices={choices} after={after} next={found.next} />
            <Downloads list="found" query={start.slice(PATH.length)} />
          </>
        )}
      </div>
    </>
  )
}
