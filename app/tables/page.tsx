import type { Metadata } from 'next'
import { content } from '#lib/content/index.ts'
import type { ProportionTable } from '#lib/content/types.ts'
import { USES, type Use } from '#lib/entry/terms.ts'
import { alternates } from '../_ui/alternates.ts'
import { inEnglish } from '../_ui/as-written.ts'
import { SelectField } from '../_ui/field.tsx'
import { labelOf } from '../_ui/label.ts'
import { PageHead } from '../_ui/page-head.tsx'
import { oneOf, type Query } from '../_ui/query.ts'
import { English } from '../_ui/written.tsx'
import { compareTitles, formatYear } from '../_words/format.ts'
import { words } from '../_words/index.ts'

const t = words('pages')

export const generateMetadata = (): Metadata => ({
  title: t('tables.title'),
  alternates: alternates('/tables'),
})

const PERIODS = {
  'before-1500': [-9999, 1499],
  '1500-1799': [1500, 1799],
  '1800-1899': [1800, 1899],
  'after-1900': [1900, 9999],
} as const
type Period = keyof typeof PERIODS

/** Every proportion table by title, to be narrowed by what the mortar was for and when it was written down. */
export default async function TablesPage({ searchParams }: { searchParams: Promise<Query> }) {
  const query = await searchParams
  const use = oneOf(USES, query.use)
  const period = oneOf(Object.keys(PERIODS) as Period[], query.period)
  const all = [...content().tables.values()].sort((a, b) => compareTitles(a.title, b.title))
  const tables = all.filter((table) => table.rows.some((row) => fits(row, use, period)))
  return (
    <>
      <PageHead
        title={t('tables.title')}
        lead={t('tables.lead', { tables: all.length, rows: content().rows.size })}
      >
        <p className="facts-line">
          <a className="touch" href="/compare">
            {words('library')('compare.link')}
          </a>
        </p>
      </PageHead>
      <form className="filter" method="get">
        <div className="form-grid">
          <SelectField
            name="use"
            label={t('filter.use')}
            any={t('filter.anyUse')}
            {...(use && { value: use })}
            options={USES.filter((one) =>
              all.some((table) => table.rows.some((row) => row.uses.includes(one))),
            ).map((one) => ({ value: one, label: labelOf('uses', one) }))}
          />
          <SelectField
            name="period"
            label={t('filter.period')}
            any={t('filter.anyPeriod')}
            {...(period && { value: period })}
            options={(Object.keys(PERIODS) as Period[]).map((one) => ({
              value: one,
              label: t(`tables.period.${one}`),
            }))}
          />
        </div>
        <div className="actions">
          <button className="button" type="submit">
            {t('filter.show')}
          </button>
          <a href="/tables">{t('filter.clear')}</a>
        </div>
      </form>
      <p className="facts-line">
        {t(use || period ? 'tables.found' : 'tables.all', { count: tables.length })}
      </p>
      <ul className="index">
        {tables.map((table) => (
          <TableLine key={table.id} table={table} />
        ))}
      </ul>
    </>
  )
}

const fits = (row: ProportionTable['rows'][number], use?: Use, period?: Period) =>
  (use === undefined || row.uses.includes(use)) &&
  (period === undefined || (row.from <= PERIODS[period][1] && row.to >= PERIODS[period][0]))

function TableLine({ table }: { table: ProportionTable }) {
  const from = Math.min(...table.rows.map((row) => row.from))
  const to = Math.max(...table.rows.map((row) => row.to))
  const [first] = table.intro
  return (
    <li>
      <div>
        <h2 className="index-title">
          <a href={`/tables/${table.id}`} {...inEnglish()}>
            {table.title}
          </a>
        </h2>
        {first !== undefined && <p {...inEnglish()}>{first}</p>}
      </div>
      <p className="index-side">
        {t('tables.rows', { count: table.rows.length })}
        <br />
        {from === to
          ? formatYear(from)
          : words('common')('year.span', { from: formatYear(from), to: formatYear(to) })}
        <br />
        <English>{[...new Set(table.rows.flatMap((row) => row.region.split('; ')))].join('; ')}</English>
      </p>
    </li>
  )
}
