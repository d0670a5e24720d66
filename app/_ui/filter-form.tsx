import { words } from '../_words/index.ts'
import { SelectField } from './field.tsx'
import { labelOf } from './label.ts'

export interface Facet {
  name: 'unit' | 'use' | 'family'
  value: string | undefined
  any: 'anyUnit' | 'anyUse' | 'anyFamily'
  counts: readonly { id: string; label: string; count: number }[]
}

interface Count {
  readonly id: string
  readonly count: number
}

/** Counts with the choice that was made among them, even one that no count was made of: a form shows what it did. */
export const withChosen = (
  counts: readonly Count[],
  value: string | undefined,
  count = 0,
): readonly Count[] =>
  value === undefined || counts.some(({ id }) => id === value) ? counts : [...counts, { id: value, count }]

/** Counts of a vocabulary's terms under their labels, the choice that was made among them. */
export const labelled = (vocabulary: string, counts: readonly Count[], value: string | undefined) =>
  withChosen(counts, value).map((one) => ({ ...one, label: labelOf(vocabulary, one.id) }))

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
