import type { CaseFilter } from '#lib/db/case-filter.ts'
import { END_POINTS, type EndPoint } from '#lib/evidence/index.ts'
import type { Choice } from '#lib/search/works.ts'
import { SelectField } from '../_ui/field.tsx'
import { casesAddress, choicesOf } from '../_ui/find/asked.ts'
import { facetName } from '../_ui/find/labels.ts'
import { words } from '../_words/index.ts'
import { optionsOf } from './options.ts'

const t = words('evidence')
const OFFERED = ['family', 'recipe', 'unit', 'use', 'country'] as const

/** The commonest ways to choose walls, as a plain GET form; other choices are carried on. */
export function EvidenceForm(props: {
  filter: CaseFilter
  text: string
  endPoint: EndPoint
  choices: readonly Choice[]
}) {
  const { filter, text, endPoint, choices } = props
  const isOffered = (name: string) => OFFERED.some((one) => one === name)
  return (
    <form className="filter" method="get" action="/evidence" aria-label={t('form.title')}>
      <div className="form-grid form-grid-wide">
        {OFFERED.map((facet) => (
          <SelectField
            key={facet}
            name={facet}
            label={facetName(facet)}
            any={t('form.any')}
            {...(filter[facet]?.[0] !== undefined && { value: filter[facet][0] })}
            options={optionsOf(choices, facet, filter[facet])}
          />
        ))}
        <EndPointField endPoint={endPoint} />
      </div>
      {text !== '' && <input type="hidden" name="q" value={text} />}
      {choicesOf(filter)
        .filter(({ name, value }) => !isOffered(name) || filter[name as 'unit']?.[0] !== value)
        .map(({ name, value }) => (
          <input key={`${name} ${value}`} type="hidden" name={name} value={value} />
        ))}
      <div className="actions">
        <button className="button" type="submit">
          {t('form.show')}
        </button>
        <a className="touch" href={casesAddress('/cases', { filter, text })}>
          {t('form.more')}
        </a>
      </div>
    </form>
  )
}

/** Which end point is counted. */
export const EndPointField = ({ endPoint }: { endPoint: EndPoint }) => (
  <SelectField
    name="end"
    label={t('form.end')}
    value={endPoint}
    options={END_POINTS.map((value) => ({ value, label: t(`end.${value}`) }))}
  />
)
