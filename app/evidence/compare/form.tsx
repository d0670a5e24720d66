import type { EndPoint } from '#lib/evidence/index.ts'
import type { Choice, ChoiceOf } from '#lib/search/works.ts'
import { Field } from '../../_ui/field.tsx'
import { choicesOf } from '../../_ui/find/asked.ts'
import { facetName } from '../../_ui/find/labels.ts'
import { words } from '../../_words/index.ts'
import { EndPointField } from '../form.tsx'
import { optionsOf, titlesOf } from '../options.ts'
import { ALL, type Asked, GROUPS, type GroupKey, groupLabel } from './groups.ts'

const t = words('evidence')
const OFFERED: readonly ChoiceOf[] = ['family', 'recipe', 'unit', 'method', 'use', 'country', 'row']

/** Two or three groups, each from one list; what holds for all groups is carried on. A plain GET form. */
export function CompareForm(props: { asked: Asked; endPoint: EndPoint; choices: readonly Choice[] }) {
  const { asked, endPoint, choices } = props
  return (
    <form className="filter" method="get" action="/evidence/compare" aria-label={t('compare.form')}>
      <div className="form-grid form-grid-wide">
        {GROUPS.map((key) => (
          <GroupField key={key} name={key} asked={asked} choices={choices} />
        ))}
        <EndPointField endPoint={endPoint} />
      </div>
      {choicesOf(asked.within).map(({ name, value }) => (
        <input key={`${name} ${value}`} type="hidden" name={name} value={value} />
      ))}
      <div className="actions">
        <button className="button" type="submit">
          {t('compare.show')}
        </button>
      </div>
    </form>
  )
}

function GroupField({ name, asked, choices }: { name: GroupKey; asked: Asked; choices: readonly Choice[] }) {
  const chosen = asked.groups.find(({ key }) => key === name)
  const lists = OFFERED.map((of) => ({
    of,
    options: optionsOf(choices, of).map(({ value, ...shown }) => ({
      value: new URLSearchParams([[of, value]]).toString(),
      ...shown,
    })),
  })).filter(({ options }) => options.length > 0)
  const isOffered =
    chosen === undefined ||
    chosen.query === ALL ||
    lists.some(({ options }) => options.some(({ value }) => value === chosen.query))
  return (
    <Field name={name} label={t('compare.group', { letter: name.toUpperCase() })}>
      {(control) => (
        <select {...control} defaultValue={chosen?.query ?? ''}>
          <option value="">{t('compare.none')}</option>
          {!isOffered && chosen !== undefined && (
            <option value={chosen.query}>
              {t('compare.chosen', { label: groupLabel(chosen.filter, titlesOf(choices)) })}
            </option>
          )}
          <option value={ALL}>{t('compare.all')}</option>
          {lists.map(({ of, options }) => (
            <optgroup key={of} label={facetName(of)}>
              {options.map(({ value, label, lang }) => (
                <option key={value} value={value} lang={lang}>
                  {label}
                </option>
              ))}
            </optgroup>
          ))}
        </select>
      )}
    </Field>
  )
}
