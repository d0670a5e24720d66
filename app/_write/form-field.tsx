import type { ReactNode } from 'react'
import type { WrittenKind } from '#lib/entry/body.ts'
import { MARKS, markName, readAmount } from '../_http/form.ts'
import { Field } from '../_ui/field.tsx'
import { Photo } from '../_ui/photo.tsx'
import { withUnit } from '../_ui/quantity.tsx'
import { formatNumber } from '../_words/format.ts'
import { words } from '../_words/index.ts'
import { Checks, Scale, Tick } from './choices.tsx'
import { Control } from './control.tsx'
import { hintFor, labelFor } from './labels.ts'
import { type Look, lookOf } from './look.ts'
import { isNeeded } from './needed.ts'
import { optionsOf } from './options.ts'
import type { FormView } from './view.ts'

const t = words('write')

/** One field of a form, asked as its schema and its place want it. */
export function FormField({
  view,
  name,
  value,
  place,
}: {
  view: FormView
  name: string
  value?: string | undefined
  /** Of one in a list that says what they are: which one it is. */
  place?: number
}) {
  const look = lookOf(view.tree, name)
  const text = view.typed[name] ?? value ?? ''
  const error = view.faults.find((fault) => fault.name === name && (view.all || !fault.missing))?.sentence
  const note = view.notes.get(name)
  const hint = place === undefined ? hintWithWords(view, name) : undefined
  const row = {
    name,
    label:
      place === undefined ? (
        <FieldLabel kind={view.kind} name={name} />
      ) : (
        <span className="hidden-words">
          {t('form.place', { label: labelFor(name), number: String(place) })}
        </span>
      ),
    ...(hint !== undefined && { hint }),
    ...(error !== undefined && { error }),
    ...(note !== undefined && { echo: note }),
  }
  if (look.as === 'picture')
    return (
      <>
        <input type="hidden" name={name} value={text} />
        <Photo photo={{ sha256: text, alt: '' }} facts={view.pictures.get(text)} />
      </>
    )
  if (look.as === 'tick') return <Tick {...row} checked={text === 'yes'} />
  if (look.as === 'checks') return <Checks {...row} options={optionsOf(look)} chosen={text.split('\n')} />
  if (look.as === 'scale')
    return <Scale {...row} options={look.options} vocabulary={vocabularyOf(look)} chosen={text} />
  const unit = 'unit' in look && look.unit !== undefined ? withUnit('', look.unit).trim() : undefined
  return (
    <div className="write-field">
      <Field {...row} {...(unit !== undefined && { unit })}>
        {(control) => <Control look={look} control={control} text={text} view={view} />}
      </Field>
      <p className="field-live" id={`live-${name}`} aria-live="polite" />
      <WhichMark view={view} name={name} />
    </div>
  )
}

/** What helps to fill a field, and what a reviewer said of it. */
export function hintWithWords(view: FormView, name: string): ReactNode {
  const hint = hintFor(view.kind, name)
  const said = view.returned?.fields.filter((field) => field.name === name) ?? []
  if (said.length === 0) return hint
  return (
    <>
      {hint}
      {said.map(({ words: words_ }) => (
        <span key={words_} className="block said">
          {t('returned.said', { who: view.returned?.by ?? '', words: words_ })}
        </span>
      ))}
    </>
  )
}

const FieldLabel = ({ kind, name }: { kind: WrittenKind; name: string }) => (
  <>
    {labelFor(name)}
    {isNeeded(kind, name) && <span className="note"> {t('form.needed')}</span>}
  </>
)

const vocabularyOf = (look: Look): string =>
  'words' in look && 'vocabulary' in look.words ? look.words.vocabulary : ''

/** Asks which of two figures was meant by one like `1,500`. */
function WhichMark({ view, name }: { view: FormView; name: string }) {
  const { readings, amount } = readAmount(view.typed, name)
  const look = lookOf(view.tree, name)
  if (!readings || (look.as !== 'figure' && look.as !== 'range')) return null
  return (
    <fieldset className="write-ask">
      <legend>{t('mark.legend')}</legend>
      {MARKS.map((mark) => {
        const { low, high } = readings[mark]
        return (
          <label key={mark} className="choice">
            <input
              type="radio"
              name={markName(name)}
              value={mark}
              defaultChecked={amount !== undefined && amount.low === low}
            />
            {low === high ? formatNumber(low) : `${formatNumber(low)}–${formatNumber(high)}`}
          </label>
        )
      })}
    </fieldset>
  )
}
