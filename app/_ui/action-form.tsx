'use client'

import { createContext, type ReactNode, useActionState, useContext, useEffect, useRef } from 'react'
import { type ActionState, type FormAction, startState } from '../_http/action-state.ts'
import { type ControlProps, Field, type Option } from './field.tsx'

/** One control of an {@link ActionForm}. */
export interface FormField {
  readonly name: string
  readonly label: string
  readonly hint?: string
  readonly kind: 'text' | 'email' | 'password' | 'long' | 'choice' | 'checks'
  readonly autoComplete?: string
  readonly required?: boolean
  readonly maxLength?: number
  /** What it begins with; of `checks`, the values that are ticked, with spaces between. */
  readonly value?: string
  /** Of `choice` and `checks`. */
  readonly options?: readonly Option[]
}

/**
 * A form of a few fields that a server action answers: with JavaScript in place, without it as a plain post. What was
 * typed comes back with what was wrong, and the focus goes to the sentence that says so.
 *
 * @param id tells the forms of one page apart
 * @param faulty says that something below is wrong
 */
export function ActionForm(props: {
  id: string
  action: FormAction
  fields?: readonly FormField[]
  hidden?: Readonly<Record<string, string>>
  send: string
  /** Of forms that stand one below the other and do the same: to which of them, for who cannot see where each stands. */
  about?: string
  faulty: string
  plain?: boolean
  /** Stands before the fields; what is asked in it is kept by `TypedArea`. */
  above?: ReactNode
  children?: ReactNode
}) {
  const { id, fields = [], hidden = {} } = props
  const [state, run, busy] = useActionState(props.action, startState())
  const told = useRef<HTMLDivElement>(null)
  // The browser's own checks would say less, and in its own language.
  useEffect(() => {
    if (state.turn > 0) told.current?.focus()
  }, [state.turn])
  const named = new Set(fields.map(({ name }) => name))
  const elsewhere = Object.entries(state.errors).filter(([name]) => !named.has(name))
  const wrong = state.refusal !== undefined || Object.keys(state.errors).length > 0
  return (
    <form className="act" action={run} noValidate id={id}>
      {(wrong || state.done !== undefined) && (
        <div
          className={wrong ? 'act-told act-wrong' : 'act-told'}
          role={wrong ? 'alert' : 'status'}
          ref={told}
          tabIndex={-1}
        >
          <p>{state.done ?? state.refusal ?? props.faulty}</p>
          {elsewhere.map(([name, sentence]) => (
            <p key={name}>{sentence}</p>
          ))}
        </div>
      )}
      {Object.entries(hidden).map(([name, value]) => (
        <input key={name} type="hidden" name={name} value={value} />
      ))}
      <TypedContext value={state.typed}>{props.above}</TypedContext>
      {fields.map((field) => (
        <Row key={field.name} field={field} within={id} state={state} />
      ))}
      {props.children}
      <div className="actions">
        <button
          className={props.plain === true ? 'button button-plain' : 'button'}
          type="submit"
          aria-busy={busy}
        >
          {props.send}
          {props.about !== undefined && <span className="hidden-words">: {props.about}</span>}
        </button>
      </div>
    </form>
  )
}

const TypedContext = createContext<ActionState['typed']>({})

/** A place for longer words within the `above` of an {@link ActionForm}: what was typed comes back. */
export const TypedArea = (props: { id: string; name: string; rows: number; maxLength: number }) => {
  const typed = useContext(TypedContext)
  return <textarea {...props} defaultValue={typed[props.name]} />
}

function Row({ field, within, state }: { field: FormField; within: string; state: ActionState }) {
  const error = state.errors[field.name]
  const value = state.typed[field.name] ?? field.value
  if (field.kind === 'checks') {
    // Nothing ticked is sent as nothing at all.
    const ticked = state.turn > 0 ? (state.typed[field.name] ?? '') : (field.value ?? '')
    return <Checks field={field} within={within} error={error} ticked={ticked.split(' ')} />
  }
  return (
    <Field
      name={field.name}
      within={within}
      label={field.label}
      {...(field.hint !== undefined && { hint: field.hint })}
      {...(error !== undefined && { error })}
    >
      {(control) => <Control field={field} control={control} value={value} />}
    </Field>
  )
}

function Control(props: { field: FormField; control: ControlProps; value: string | undefined }) {
  const { field, control, value } = props
  const common = {
    ...control,
    required: field.required,
    defaultValue: value,
    autoComplete: field.autoComplete ?? 'off',
  }
  if (field.kind === 'long') return <textarea {...common} rows={4} maxLength={field.maxLength} />
  if (field.kind === 'choice')
    return (
      // React keeps a list's first choice when only its default changes; the key makes it anew.
      <select {...common} key={value}>
        {field.options?.map((option) => (
          <option key={option.value} value={option.value}>
            {option.label}
          </option>
        ))}
      </select>
    )
  return <input {...common} type={field.kind} maxLength={field.maxLength} />
}

function Checks(props: {
  field: FormField
  within: string
  error: string | undefined
  ticked: readonly string[]
}) {
  const { field, within, error, ticked } = props
  const id = `field-${within}-${field.name}`
  const described = [error && `${id}-error`, field.hint && `${id}-hint`].filter(Boolean).join(' ')
  return (
    <fieldset
      className={error === undefined ? 'field' : 'field field-faulty'}
      id={id}
      {...(described !== '' && { 'aria-describedby': described })}
    >
      <legend>{field.label}</legend>
      {field.hint !== undefined && (
        <p className="field-hint" id={`${id}-hint`}>
          {field.hint}
        </p>
      )}
      {error !== undefined && (
        <p className="field-error" id={`${id}-error`}>
          {error}
        </p>
      )}
      {field.options?.map((option) => (
        <label key={option.value} className="choice" htmlFor={`${id}-${option.value}`}>
          <input
            id={`${id}-${option.value}`}
            type="checkbox"
            name={field.name}
            value={option.value}
            defaultChecked={ticked.includes(option.value)}
          />
          {option.label}
        </label>
      ))}
    </fieldset>
  )
}
