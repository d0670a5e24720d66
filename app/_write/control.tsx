import type { ReactNode } from 'react'
import type { Option } from '../_ui/field.tsx'
import { words } from '../_words/index.ts'
import { countries } from './countries.ts'
import type { ChoiceWords, Look } from './look.ts'
import { optionsOf } from './options.ts'
import type { FormView } from './view.ts'

const t = words('write')

interface ControlProps {
  readonly look: Look
  readonly control: { id: string; name: string }
  readonly text: string
  readonly view: FormView
}

/** What is typed or chosen in, as a field's schema and place want it. */
export function Control({ look, control, text, view }: ControlProps): ReactNode {
  switch (look.as) {
    case 'words':
      return <textarea {...control} rows={4} defaultValue={text} />
    case 'figure':
    case 'range':
      return <input {...control} type="text" inputMode="decimal" autoComplete="off" defaultValue={text} />
    case 'day':
      return (
        <input
          {...control}
          type="text"
          autoComplete="off"
          defaultValue={text}
          placeholder={t('form.dayForm')}
        />
      )
    case 'pick':
    case 'picks':
      return (
        <input {...control} type="text" list={`list-${look.from}`} autoComplete="off" defaultValue={text} />
      )
    case 'select':
      return <Select control={control} text={text} options={optionsOf(look)} any={anyOf(look)} />
    case 'own':
      return <Select control={control} text={text} options={view.own[look.of]} any={t('choose')} />
    case 'country':
      return <Select control={control} text={text} options={countries()} any={t('choose')} />
    case 'answer':
      return (
        <Select
          control={control}
          text={text}
          options={[
            { value: 'yes', label: t('yes') },
            { value: 'no', label: t('no') },
          ]}
          any={t('notSaid')}
        />
      )
    default:
      return <input {...control} type="text" autoComplete="off" defaultValue={text} />
  }
}

type ChoiceLook = Extract<Look, { readonly words: ChoiceWords }>

/** What a list says where nothing is chosen; one that knows "not recorded" says that of itself. */
function anyOf({ options, words: from }: ChoiceLook): string | undefined {
  if ('vocabulary' in from && from.vocabulary === 'seasons') return t('form.asDay')
  return options.includes('not-recorded') ? undefined : t('choose')
}

function Select(props: {
  control: object
  text: string
  options: readonly Option[]
  any: string | undefined
}) {
  const { control, text, options, any } = props
  const chosen = text === '' && any === undefined ? 'not-recorded' : text
  const known = chosen === '' || options.some(({ value }) => value === chosen)
  return (
    // React keeps a list's first choice when only its default changes; the key makes it anew.
    <select key={chosen} {...control} defaultValue={chosen}>
      {any !== undefined && <option value="">{any}</option>}
      {!known && <option value={chosen}>{chosen}</option>}
      {options.map(({ value, label }) => (
        <option key={value} value={value}>
          {label}
        </option>
      ))}
    </select>
  )
}
