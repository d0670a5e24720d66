import type { ReactNode } from 'react'
import type { CaseSummary } from '#lib/db/cases.ts'
import { formatDate } from '../_words/format.ts'
import { words } from '../_words/index.ts'
import { asWritten } from './as-written.ts'
import { InventedMark } from './invented.tsx'
import { labelList, labelOf } from './label.ts'
import { StatesLine } from './states.tsx'

/**
 * Cases as an index: the wall, where it stands, how long it was watched, how it was last seen.
 *
 * @param more what a list has to say of each beyond that: why it was found, what it is like
 */
export function CaseIndex<C extends CaseSummary>(props: {
  cases: readonly C[]
  head?: 'h2' | 'h3'
  more?: (one: C) => ReactNode
}) {
  const { cases, head = 'h2', more } = props
  const t = words('pages')
  const Head = head
  return (
    <ul className="index">
      {cases.map((one) => (
        <li key={one.slug}>
          <div>
            <Head className="index-title">
              <a href={`/cases/${one.slug}`} {...asWritten()}>
                {one.title}
              </a>
            </Head>
            <p {...asWritten()}>{one.summary}</p>
            <p className="facts-line">
              <span>{labelList('units', one.units)}</span>
              <span>
                {t('cases.place', { region: one.region, country: labelOf('countries', one.country) })}
              </span>
              {one.invented && <InventedMark />}
            </p>
            {more?.(one)}
          </div>
          <div className="index-side">
            <p>
              {t('cases.visits', { count: one.visits })}
              {one.yearsWatched !== null && one.yearsWatched >= 1 && (
                <> · {t('cases.watched', { years: Math.floor(one.yearsWatched) })}</>
              )}
            </p>
            {one.latest === null ? (
              <p>{t('cases.unseen')}</p>
            ) : (
              <>
                <p>{t('cases.latest', { date: formatDate(one.latest.on) })}</p>
                <StatesLine states={one.latest} />
              </>
            )}
          </div>
        </li>
      ))}
    </ul>
  )
}
