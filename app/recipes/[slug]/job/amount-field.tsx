import { amountText, usualText } from '../../../_ui/amount-text.ts'
import { NumberField } from '../../../_ui/field.tsx'
import { withUnit } from '../../../_ui/quantity.tsx'
import { WhichMark } from '../../../_ui/which-mark.tsx'
import { words } from '../../../_words/index.ts'
import { fieldLabel } from './labels.ts'
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
      {read.readings && (
        <WhichMark
          name={name}
          legend={t('ask.legend', { text: read.text })}
          readings={read.readings}
          unit={askedUnit}
          amount={read.amount}
          className="job-ask"
        />
      )}
    </div>
  )
}

/** What happens when nothing is typed. */
function blankHint({ usual, known, fallback, unit, askedUnit, optional }: ReadField): string {
  const t = words('job')
  if (fallback) {
    return fallback.high === 0
      ? t('hint.none')
      : t('hint.fallback', { usual: usualText(fallback, unit, askedUnit) })
  }
  const taken = usual ?? known
  if (!taken) return optional ? t('hint.optional') : t('hint.needed')
  return t('hint.usual', {
    usual: usualText(taken, unit, askedUnit),
    basis: words('terms')(`basis.${taken.basis}.label`),
  })
}
