import { Field } from '../../../_ui/field.tsx'
import { words } from '../../../_words/index.ts'
import type { Inputs } from './read-inputs.ts'

/** For a recipe that is not in use: a sheet only for a reason that someone states. */
export function OverrideFields({ inputs, error }: { inputs: Inputs; error: string | undefined }) {
  const t = words('job')
  return (
    <fieldset>
      <legend>{t('standing.title')}</legend>
      <label className="choice">
        <input type="checkbox" name="override" value="yes" required defaultChecked={inputs.overridden} />
        {t('fields.override')}
      </label>
      <Field name="reason" label={t('fields.reason')} {...(error !== undefined && { error })}>
        {(control) => (
          <textarea {...control} required rows={2} maxLength={300} defaultValue={inputs.reason} />
        )}
      </Field>
    </fieldset>
  )
}
