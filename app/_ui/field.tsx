import type { ReactNode } from 'react'

/** What a control must carry so that its label, hint and error are read with it. */
export interface ControlProps {
  id: string
  name: string
  'aria-describedby'?: string
  'aria-invalid'?: true
}

export interface FieldProps {
  name: string
  /** Where two forms of a page have a field of the same name, what tells this one apart. */
  within?: string
  label: ReactNode
  unit?: ReactNode
  hint?: ReactNode
  /** What was read from what was typed, for numbers. */
  echo?: ReactNode
  error?: ReactNode
}

/** The one form row: label, control with its unit, what was read, what would help, what is wrong. */
export function Field(props: FieldProps & { children: (control: ControlProps) => ReactNode }) {
  const { name, label, unit, hint, echo, error } = props
  const id = props.within === undefined ? `field-${name}` : `field-${props.within}-${name}`
  const said = { error, unit, hint, echo }
  const described = (['error', 'unit', 'hint', 'echo'] as const).filter((part) => said[part] !== undefined)
  return (
    <div className={error === undefined ? 'field' : 'field field-faulty'}>
      <label htmlFor={id}>{label}</label>
      {hint !== undefined && (
        <p className="field-hint" id={`${id}-hint`}>
          {hint}
        </p>
      )}
      {error !== undefined && (
        <p className="field-error" id={`${id}-error`}>
          {error}
        </p>
      )}
      <div className="field-control">
        {props.children({
          id,
          name,
          ...(described.length > 0 && {
            'aria-describedby': described.map((part) => `${id}-${part}`).join(' '),
          }),
          ...(error !== undefined && { 'aria-invalid': true }),
        })}
        {unit !== undefined && (
          <span className="field-unit" id={`${id}-unit`}>
            {unit}
          </span>
        )}
      </div>
      {echo !== undefined && (
        <p className="field-echo" id={`${id}-echo`}>
          {echo}
        </p>
      )}
    </div>
  )
}

/** A number as people write one: text with a decimal keypad, so that a comma or a fraction can be typed. */
export const NumberField = (props: FieldProps & { value?: string }) => (
  <Field {...props}>
    {(control) => (
      <input {...control} type="text" inputMode="decimal" autoComplete="off" defaultValue={props.value} />
    )}
  </Field>
)

export interface Option {
  value: string
  label: string
  /** Of a label that is not in the language of the page. */
  lang?: string
}

/** One of a closed list. `any` is the first line, chosen when nothing is. */
export const SelectField = (
  props: FieldProps & { value?: string; any?: string; options: readonly Option[] },
) => (
  <Field {...props}>
    {(control) => (
      <select {...control} defaultValue={props.value ?? ''}>
        {props.any !== undefined && <option value="">{props.any}</option>}
        {props.options.map((option) => (
          <option key={option.value} value={option.value} lang={option.lang}>
            {option.label}
          </option>
        ))}
      </select>
    )}
  </Field>
)
