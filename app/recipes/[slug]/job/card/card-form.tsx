import type { Typed } from '../../../../_http/form.ts'
import { words } from '../../../../_words/index.ts'
import { AmountField } from '../amount-field.tsx'
import type { FormFault } from '../form-faults.ts'
import type { Inputs } from '../read-inputs.ts'

/** How much one load is, and the box or bucket it is measured in; all else of the job goes along unseen. */
export function CardForm({
  action,
  inputs,
  asked,
  faults,
  revision,
}: {
  action: string
  inputs: Inputs
  asked: Typed
  faults: readonly FormFault[]
  revision: number | undefined
}) {
  const t = words('job')
  const fields = [
    { field: inputs.site.mixer, hint: t('card.mixerHint') },
    { field: inputs.site.box, hint: t('card.boxHint') },
  ]
  const shown = fields.flatMap(({ field: { name } }) => [name, `${name}-mark`])
  const along = Object.entries(asked).filter(([name]) => !shown.includes(name))
  return (
    <form className="job-form filter screen-only" method="get" action={action}>
      {revision !== undefined && <input type="hidden" name="r" value={revision} />}
      {along.map(([name, value]) => (
        <input key={name} type="hidden" name={name} value={value} />
      ))}
      <div className="form-grid">
        {fields.map(({ field, hint }) => {
          const error = faults.find(({ name }) => name === field.name)?.sentence
          return (
            <AmountField key={field.name} field={field} hint={hint} {...(error !== undefined && { error })} />
          )
        })}
      </div>
      <div className="actions">
        <button className="button" type="submit">
          {t('card.submit')}
        </button>
        <span className="note">{t('card.print')}</span>
      </div>
    </form>
  )
}
