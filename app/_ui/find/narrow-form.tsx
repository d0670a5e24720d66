import { CASE_FACETS, type CaseFacet } from '#lib/entry/facets.ts'
import type { FieldFault } from '#lib/errors.ts'
import { SORTS } from '#lib/search/index.ts'
import { words } from '../../_words/index.ts'
import { NumberField, SelectField } from '../field.tsx'
import type { CasesAsked } from './asked.ts'
import { type FacetCount, FacetGroup } from './facet-group.tsx'
import { typedWrong } from './faults.tsx'
import { SearchField } from './search-field.tsx'

export type FacetCounts = { readonly [F in CaseFacet | 'years']: readonly FacetCount[] }

/** Facets that are chosen by following a link, not from a list: the form only carries them on. */
const CARRIED: readonly CaseFacet[] = ['recipe', 'row']

/** What most people narrow by first. */
const OPEN: readonly CaseFacet[] = ['unit', 'use']

/**
 * Words, facets and order of a list of cases in one GET form: the address is the state, and every choice shows
 * how many cases it would leave.
 */
export function NarrowForm(props: {
  action: string
  asked: CasesAsked
  facets: FacetCounts
  /** What of the address could not be used. */
  faults: readonly FieldFault[]
  hasSort?: boolean
}) {
  const { action, asked, facets, faults, hasSort = true } = props
  const t = words('find')
  const { filter, text, sort } = asked
  return (
    <form className="filter narrow" method="get" action={action}>
      <div className="narrow-line">
        <SearchField text={text} label={t('search.cases')} hint={t('search.hint')} />
        {hasSort && (
          <SelectField
            name="sort"
            label={t('sort.label')}
            any={t('sort.any')}
            {...(sort !== undefined && { value: sort })}
            options={SORTS.map((value) => ({ value, label: t(`sort.${value}`) }))}
          />
        )}
        <button className="button" type="submit">
          {t('search.show')}
        </button>
      </div>
      <details className="narrow-facets" open={typedWrong(faults, 'maxYears').error !== undefined}>
        <summary>{t('facet.narrow')}</summary>
        <div className="facets">
          {CASE_FACETS.filter((facet) => !CARRIED.includes(facet)).map((facet) => (
            <FacetGroup
              key={facet}
              facet={facet}
              counts={facets[facet]}
              chosen={filter[facet] ?? []}
              open={OPEN.includes(facet)}
            />
          ))}
          <Years asked={asked} counts={facets.years} typed={typedWrong(faults, 'maxYears')} />
        </div>
        <button className="button" type="submit">
          {t('search.show')}
        </button>
      </details>
      {CARRIED.flatMap((facet) =>
        (filter[facet] ?? []).map((value) => (
          <input key={`${facet} ${value}`} type="hidden" name={facet} value={value} />
        )),
      )}
    </form>
  )
}

/** Whole years for which a wall was watched: from a list with counts, and up to any number. */
function Years(props: {
  asked: CasesAsked
  counts: readonly FacetCount[]
  typed: ReturnType<typeof typedWrong>
}) {
  const { asked, counts, typed } = props
  const { filter } = asked
  const t = words('find')
  const { minYears, maxYears } = filter
  const chosen = minYears?.toString()
  const offered = counts.filter(({ id, count }) => count > 0 || id === chosen)
  const options = offered.map(({ id, count }) => ({
    value: id,
    label: t('years.counted', { years: Number(id), count }),
  }))
  if (chosen !== undefined && !offered.some(({ id }) => id === chosen))
    options.unshift({ value: chosen, label: t('years.minYears', { years: Number(chosen) }) })
  return (
    <details
      className="facet"
      open={minYears !== undefined || maxYears !== undefined || typed.error !== undefined}
    >
      <summary>{t('facet.summary', { name: t('facet.years'), chosen: 0 })}</summary>
      <div className="stack">
        <SelectField
          name="minYears"
          label={t('years.least')}
          any={t('years.any')}
          {...(chosen !== undefined && { value: chosen })}
          options={options}
        />
        <NumberField
          name="maxYears"
          label={t('years.most')}
          {...(maxYears !== undefined && { value: String(maxYears) })}
          {...typed}
        />
      </div>
    </details>
  )
}
