import type { Metadata } from 'next'
import { content } from '#lib/content/index.ts'
import { newestCases } from '#lib/db/cases.ts'
import { recipeFacets } from '#lib/db/recipes.ts'
import { alternates } from './_ui/alternates.ts'
import { CaseIndex } from './_ui/case-index.tsx'
import { WallDrawing } from './_ui/drawings.tsx'
import { SelectField } from './_ui/field.tsx'
import { SearchField } from './_ui/find/search-field.tsx'
import { InventedNotice } from './_ui/invented.tsx'
import { Section } from './_ui/section.tsx'
import { unitOptions, unitPairs } from './_ui/unit-tree.ts'
import { words } from './_words/index.ts'

const t = words('pages')

export const generateMetadata = (): Metadata => ({ alternates: alternates('/') })

/** The three jobs: find, work out, record; then what was seen last and what the figures are. */
export default async function HomePage() {
  const [facets, cases] = await Promise.all([recipeFacets({}, unitPairs()), newestCases(4)])
  const { rows, tables } = content()
  const read = [...rows.values()].filter(({ basis }) => basis === 'read').length
  return (
    <>
      <header className="opening">
        <div>
          <h1>{t('home.title')}</h1>
          <p className="lead">{t('home.lead')}</p>
        </div>
        <WallDrawing title={t('home.drawing')} />
      </header>
      <div className="three">
        <section aria-labelledby="find">
          <h2 id="find">{t('home.find')}</h2>
          <p>{t('home.findText')}</p>
          <form method="get" action="/find" className="stack">
            <SearchField text="" label={words('find')('search.all')} />
            <button type="submit" className="button">
              {t('home.searchButton')}
            </button>
          </form>
          <p>
            {t.rich('home.findWays', {
              like: (inner) => <a href="/like">{inner}</a>,
              map: (inner) => <a href="/map">{inner}</a>,
            })}
          </p>
          <form method="get" action="/recipes" className="stack">
            <SelectField
              name="unit"
              label={t('filter.unit')}
              any={t('filter.anyUnit')}
              options={unitOptions(facets.unit).map(({ id, label, count }) => ({
                value: id,
                label: t('filter.counted', { label, count }),
              }))}
            />
            <button type="submit" className="button button-plain">
              {t('home.findButton')}
            </button>
          </form>
        </section>
        <section aria-labelledby="work-out">
          <h2 id="work-out">{t('home.workOut')}</h2>
          <p>{t('home.workOutText')}</p>
          <p>
            <a className="button button-plain" href="/work-out">
              {t('home.workOutButton')}
            </a>
          </p>
        </section>
        <section aria-labelledby="record">
          <h2 id="record">{t('home.record')}</h2>
          <p>{t('home.recordText')}</p>
          <p>
            <a className="button button-plain" href="/record">
              {t('home.recordButton')}
            </a>
          </p>
        </section>
      </div>
      <Section
        id="newest"
        title={t('home.newest')}
        note={
          <a className="touch" href="/cases">
            {t('home.allCases')}
          </a>
        }
      >
        {cases.some(({ invented }) => invented) && <InventedNotice page="list" />}
        {cases.length === 0 ? <p>{t('home.noCases')}</p> : <CaseIndex cases={cases} head="h3" />}
      </Section>
      <Section id="figures" title={t('home.figures')}>
        <p>{t('home.figuresText', { tables: tables.size, rows: rows.size, read })}</p>
        <p>
          <a href="/method">{t('home.figuresLink')}</a>
        </p>
      </Section>
    </>
  )
}
