import type { SubmitEvent } from 'react'
import { words } from '../../_words/index.ts'
import { Field, SelectField } from '../field.tsx'
import { SYSTEMS } from '../systems.ts'
import type { BenchData } from './brought.ts'
import { BenchField } from './fields.tsx'
import type { FieldRead } from './read.ts'
import type { Worked } from './run.ts'

interface Props {
  readonly path: string
  readonly worked: Worked
  readonly data: BenchData
  /** What was chosen only the site can work out: the button leads to it, as without a script, and to the fields asked then. */
  readonly asksSite: boolean
  readonly onTyped: (form: HTMLFormElement, target: EventTarget) => void
  readonly onSubmit: (form: HTMLFormElement) => void
}

/** Everything that a result is worked from, as a plain GET form: its address is the calculation. */
export function BenchForm({ path, worked, data, asksSite, onTyped, onSubmit }: Props) {
  const t = words('workOut')
  const { form, faults } = worked
  const errorAt = (name: string) => faults.find((fault) => fault.name === name)?.sentence
  const unitsError = errorAt('in')
  return (
    <form
      className="bench-form filter screen-only"
      method="get"
      action={path}
      onInput={(event) => onTyped(event.currentTarget, event.target)}
      onSubmit={(event: SubmitEvent<HTMLFormElement>) => {
        if (asksSite) return
        event.preventDefault()
        onSubmit(event.currentTarget)
      }}
    >
      <input type="hidden" name="units" value={form.system} />
      {asksSite && <input type="hidden" name="show" value="fields" />}
      {groupsOf(form.fields).map((group) => (
        <Group key={group.fields[0]?.field.name} group={group} errorAt={errorAt} data={data} />
      ))}
      <fieldset>
        <legend>{t('form.sheet')}</legend>
        <div className="form-grid">
          <SelectField
            name="in"
            label={t('form.units')}
            hint={t('form.unitsHint')}
            value={form.system}
            options={SYSTEMS.map((system) => ({ value: system, label: t(`systems.${system}`) }))}
            {...(unitsError !== undefined && { error: unitsError })}
          />
          <Field name="label" label={t('form.label')} hint={t('form.labelHint')}>
            {(control) => (
              <input {...control} type="text" maxLength={120} autoComplete="off" defaultValue={form.label} />
            )}
          </Field>
        </div>
      </fieldset>
      <div className="actions">
        <button className="button" type="submit">
          {t('form.submit')}
        </button>
        <a className="touch" href={path}>
          {t('form.again')}
        </a>
      </div>
    </form>
  )
}

interface FieldGroup {
  readonly head: string | undefined
  readonly fields: readonly FieldRead[]
}

/** Fields under one head; what most leave as it is stays closed until something is typed or wrong in it. */
function Group(props: { group: FieldGroup; errorAt: (name: string) => string | undefined; data: BenchData }) {
  const { group, errorAt, data } = props
  const { head, fields } = group
  const grid = (
    <div className="form-grid">
      {fields.map((read) => (
        <BenchField key={read.field.name} read={read} error={errorAt(read.field.name)} data={data} />
      ))}
      {fields.some(({ field }) => field.kind === 'choice' && field.leads) && (
        // A button that a script took away would let all below it jump.
        <noscript className="bench-show">
          <button className="button button-plain" type="submit" name="show" value="fields" formNoValidate>
            {words('workOut')('form.show')}
          </button>
        </noscript>
      )}
    </div>
  )
  if (head !== undefined && fields.every(({ field }) => field.folded))
    return (
      <details open={fields.some(({ text, field }) => text !== '' || errorAt(field.name) !== undefined)}>
        <summary>{head}</summary>
        {grid}
      </details>
    )
  return (
    <fieldset>
      {head !== undefined && <legend>{head}</legend>}
      {grid}
    </fieldset>
  )
}

/** Fields that stand under one head, in the order they were declared. */
function groupsOf(fields: readonly FieldRead[]) {
  const groups: { head: string | undefined; fields: FieldRead[] }[] = []
  for (const read of fields) {
    const last = groups.at(-1)
    if (last && last.head === read.field.group) last.fields.push(read)
    else groups.push({ head: read.field.group, fields: [read] })
  }
  return groups
}
