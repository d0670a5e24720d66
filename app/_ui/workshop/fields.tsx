import { words } from '../../_words/index.ts'
import { amountText, usualText } from '../amount-text.ts'
import { Field, NumberField, SelectField } from '../field.tsx'
import { withUnit } from '../quantity.tsx'
import { WhichMark } from '../which-mark.tsx'
import type { AmountAsked, ChoiceAsked, ListAsked } from './asked.ts'
import type { BenchData } from './brought.ts'
import { Cited } from './cited.tsx'
import type { FieldRead } from './read.ts'

interface Props {
  readonly read: FieldRead
  readonly error: string | undefined
  readonly data: BenchData
}

/** One field of a calculation, whatever it asks for. */
export function BenchField({ read, error, data }: Props) {
  const { field, text } = read
  if (field.kind === 'amount')
    return <Amount read={read as FieldRead<AmountAsked>} error={error} data={data} />
  if (field.kind === 'list') return <Row read={read as FieldRead<ListAsked>} error={error} />
  if (field.kind === 'choice') return <Choice read={read as FieldRead<ChoiceAsked>} error={error} />
  const id = `field-${field.name}`
  return (
    <div className="field bench-check">
      <label className="choice">
        <input
          id={id}
          type="checkbox"
          name={field.name}
          value="yes"
          defaultChecked={text !== ''}
          {...(field.hint !== undefined && { 'aria-describedby': `${id}-hint` })}
        />
        {field.label}
      </label>
      {field.hint !== undefined && (
        <p className="field-hint" id={`${id}-hint`}>
          {field.hint}
        </p>
      )}
    </div>
  )
}

const faulty = (error: string | undefined) => error !== undefined && { error }

function Choice({
  read: { field, text },
  error,
}: {
  read: FieldRead<ChoiceAsked>
  error: string | undefined
}) {
  return (
    <SelectField
      name={field.name}
      label={field.label}
      value={text === '' ? field.first : text}
      options={field.options}
      {...(field.hint !== undefined && { hint: field.hint })}
      {...faulty(error)}
    />
  )
}

/** Figures in a row, one a line. */
function Row({
  read: { field, text, list, askedUnit },
  error,
}: {
  read: FieldRead<ListAsked>
  error: string | undefined
}) {
  const t = words('workOut')
  const hint = [field.hint, t(field.gaps ? 'hint.listGaps' : 'hint.list')].filter((one) => one !== undefined)
  return (
    <Field
      name={field.name}
      label={field.label}
      hint={hint.join(' ')}
      {...(askedUnit !== '1' && { unit: withUnit('', askedUnit).trim() })}
      {...(list && { echo: t('echoList', { count: list.length }) })}
      {...faulty(error)}
    >
      {(control) => (
        <textarea {...control} rows={6} autoComplete="off" spellCheck={false} defaultValue={text} />
      )}
    </Field>
  )
}

/** A figure with its unit: what was read from it, what is taken when it is blank, which of two was meant. */
function Amount({ read: found, error, data }: Props & { read: FieldRead<AmountAsked> }) {
  const { field, text, askedUnit, read, fault } = found
  return (
    <div className="bench-field">
      <NumberField
        name={field.name}
        label={field.label}
        value={text}
        hint={<Hint read={found} data={data} />}
        {...(askedUnit !== '1' && { unit: withUnit('', askedUnit).trim() })}
        {...(read?.amount &&
          !fault &&
          text !== '' && { echo: words('workOut')('echo', { amount: amountText(read.amount, askedUnit) }) })}
        {...faulty(error)}
      />
      {read?.readings && (
        <WhichMark
          name={field.name}
          legend={words('workOut')('ask', { text })}
          readings={read.readings}
          unit={found.askedUnit}
          amount={read.amount}
          className="bench-ask"
        />
      )}
    </div>
  )
}

/** What would help, and what happens when nothing is typed: with where that figure comes from. */
function Hint({ read: { field, askedUnit }, data }: { read: FieldRead<AmountAsked>; data: BenchData }) {
  const t = words('workOut')
  const { usual, optional, single } = field
  return (
    <>
      {field.hint !== undefined && `${field.hint} `}
      {usual ? (
        <>
          {t('hint.blank', { usual: usualText(usual, field.unit, askedUnit) })}{' '}
          <Cited text={usual.source} basis={usual.basis} cites={data.cites} />
        </>
      ) : (
        t(optional ? 'hint.optional' : single ? 'hint.single' : 'hint.needed')
      )}
    </>
  )
}
