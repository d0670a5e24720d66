import { words } from '../_words/index.ts'
import { SelectField } from './field.tsx'

export interface Facet {
  name: 'unit' | 'use' | 'family' | 'country' | 'years'
  value: string | undefined
  any: 'anyUnit' | 'anyUse' | 'anyFamily' | 'anyCountry' | 'anyYears'
  counts: readonly { id: string; label: string; count: number }[]
}

/** Choices that narrow a list, each with how many it would leave. A plain GET form: the address is the filter. */
export function FilterForm({ action, facets }: { action: string; facets: readonly Facet[] }) {
  const t = words('pages')
  return (
    <form className="filter" method="get" action={action}>
      <div className="form-grid">
        {facets.map((facet) => (
          <SelectField
            key={facet.name}
            name={facet.name}
            label={t(`filter.${facet.name}`)}
            any={t(`filter.${facet.any}`)}
            {...(facet.value !== undefined && { value: facet.value })}
            options={facet.counts.map(({ id, label, count }) => ({
              value: id,
              label: t('filter.counted', { label, count }),
            }))}
          />
        ))}
      </div>
      <div className="actions">
        <button className="button" type="submit">
          {t('filter.show')}
        </button>
        <a className="touch" href={action}>
          {t('filter.clear')}
        </a>
      </div>
    </form>
  )
}
