import type { ReactNode } from 'react'
import { WORK_KINDS } from '#lib/mortar/takeoff.ts'
import { SelectField } from '../../../_ui/field.tsx'
import { words } from '../../../_words/index.ts'
import { fieldOfWork } from './fields.ts'
import type { ReadField, WorkRead } from './read-inputs.ts'

/** One piece of work: its kind, the dimensions that this asks for, its loss; of several one can be taken out. */
export function WorkFields({
  work: { number, kind, dimensions, loss },
  several,
  more,
  error,
  figure,
}: {
  work: WorkRead
  several: boolean
  /** Another work may follow this one. */
  more: boolean
  error: string | undefined
  figure: (field: ReadField) => ReactNode
}) {
  const t = words('job')
  const button = (value: string, label: string) => (
    <button className="button button-plain" type="submit" name="show" value={value} formNoValidate>
      {label}
    </button>
  )
  return (
    <fieldset id={fieldOfWork('work', number)}>
      <legend>{several ? t('works.number', { number: String(number) }) : t('form.work')}</legend>
      <div className="form-grid">
        <SelectField
          name={fieldOfWork('use', number)}
          label={t('form.kind')}
          hint={t('form.kindHint')}
          value={kind}
          options={WORK_KINDS.map((one) => ({ value: one, label: t(`kinds.${one}`) }))}
          {...(error !== undefined && { error })}
        />
        <div className="job-show">
          {several && button(`drop-${number}`, t('works.drop', { number: String(number) }))}
          <span className="job-show-fields">{button('fields', t('form.show'))}</span>
        </div>
      </div>
      <div className="form-grid">
        {dimensions.map((field) => figure(field))}
        {figure(loss)}
      </div>
      {more && <p className="job-more">{button('more', t('works.add'))}</p>}
    </fieldset>
  )
}
