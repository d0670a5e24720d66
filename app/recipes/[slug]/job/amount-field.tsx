import type { Range } from '#lib/mortar/range.ts'
import { MARKS, type Mark, markName } from '../../../_http/form.ts'
import { NumberField } from '../../../_ui/field.tsx'
import { withUnit } from '../../../_ui/quantity.tsx'
import { words } from '../../../_words/index.ts'
import { amountText, fieldLabel, usualText } from './labels.ts'
import type { ReadField } from './read-inputs.ts'

/** A figure with its unit: what was read from it, what is taken when it is blank, which of two was meant. */
export function AmountField({ field, error, hint }: { field: ReadField; error?: string; hint?: string }) {
  const t = words('job')
  const { name, read, askedUnit } = field
  const hints = [hint, blankHint(field)].filter((one) => one !== undefined).join(' ')
  return (
    <div className="job-field">
      <NumberField
        name={name}
        label={fieldLabel(field)}
        value={read.text}
        hint={hints}
        {...(askedUnit !== '1' && { unit: withUnit('', askedUnit).trim() })}
        {...(read.amount &&
          read.text !== '' && { echo: t('echo', { amount: amountText(read.amount, askedUnit) }) })}
        {...(error !== undefined && { error })}
      />
      {read.readings && <WhichMark field={field} readings={read.readings} />}
    </div>
  )
}

function WhichMark({ field, readings }: { field: ReadField; readings: Readonly<Record<Mark, Range>> }) {
  const { name, read, askedUnit } = field
  return (
    <fieldset className="job-ask">
      <legend>{words('job')('ask.legend', { text: read.text })}</legend>
      {MARKS.map((mark) => (
        <label key={mark} className="choice">
          <input
            type="radio"
            name={markName(name)}
            value={mark}
            defaultChecked={read.amount?.low === readings[mark].low}
          />
          {amountText(readings[mark], askedUnit)}
        </label>
      ))}
    </fieldset>
  )
}

/** What happens when nothing is typed. */
function blankHint({ usual, fallback, unit, askedUnit, optional }: ReadField): string {
  const t = words('job')
  if (fallback) {
    return fallback.high === 0
      ? t('hint.none')
      : t('hint.fallback', { usual: usualText(fallback, unit, askedUnit) })
  }
  if (!usual) return optional ? t('hint.optional') : t('hint.needed')
  return t('hint.usual', {
    usual: usualText(usual, unit, askedUnit),
    basis: words('terms')(`basis.${usual.basis}.label`),
  })
}
