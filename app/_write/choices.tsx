import type { ReactNode } from 'react'
import type { Option } from '../_ui/field.tsx'
import { termName, termOf } from '../_ui/label.ts'
import { Said } from '../_ui/said.tsx'
import { ScaleDrawing } from '../_ui/scale-drawing.tsx'

interface Row {
  readonly name: string
  readonly label: ReactNode
  readonly hint?: ReactNode
  readonly error?: string
  readonly echo?: string
}

/** Several controls under one question. */
function Group({ name, label, hint, error, children }: Row & { children: ReactNode }) {
  const id = `field-${name}`
  const described = describedBy(id, error, hint)
  return (
    <fieldset
      className={error === undefined ? 'field' : 'field field-faulty'}
      id={id}
      tabIndex={-1}
      {...(described !== '' && { 'aria-describedby': described })}
    >
      <legend>{label}</legend>
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
      {children}
      <p className="field-live" id={`live-${name}`} aria-live="polite" />
    </fieldset>
  )
}

const describedBy = (id: string, error: ReactNode, hint: ReactNode): string =>
  [error && `${id}-error`, hint && `${id}-hint`].filter(Boolean).join(' ')

/** One statement to agree to. */
export function Tick({ name, label, hint, error, checked }: Row & { checked: boolean }) {
  const id = `field-${name}`
  const described = describedBy(id, error, hint)
  return (
    <div className={error === undefined ? 'field' : 'field field-faulty'}>
      {error !== undefined && (
        <p className="field-error" id={`${id}-error`}>
          {error}
        </p>
      )}
      <label className="choice" htmlFor={id}>
        <input
          id={id}
          name={name}
          type="checkbox"
          value="yes"
          defaultChecked={checked}
          {...(described !== '' && { 'aria-describedby': described })}
          {...(error !== undefined && { 'aria-invalid': true })}
        />
        <span>{label}</span>
      </label>
      {hint !== undefined && (
        <p className="field-hint" id={`${id}-hint`}>
          {hint}
        </p>
      )}
    </div>
  )
}

/** Any of a closed list. */
export const Checks = ({
  options,
  chosen,
  ...row
}: Row & { options: readonly Option[]; chosen: readonly string[] }) => (
  <Group {...row}>
    <div className="write-checks">
      {options.map(({ value, label }) => (
        <label key={value} className="choice">
          <input type="checkbox" name={row.name} value={value} defaultChecked={chosen.includes(value)} />
          {label}
        </label>
      ))}
    </div>
  </Group>
)

/** One step of a scale, each with its drawing and the words that decide it. */
export const Scale = (props: Row & { options: readonly string[]; vocabulary: string; chosen: string }) => {
  const { options, vocabulary, chosen, ...row } = props
  return (
    <Group {...row}>
      {options.map((value) => {
        const term = termOf(vocabulary, value)
        return (
          <label key={value} className="choice write-step">
            <input type="radio" name={row.name} value={value} defaultChecked={chosen === value} />
            <ScaleDrawing vocabulary={vocabulary} state={value} />
            <span>
              <strong>{term ? termName(term) : value}</strong>
              <span className="block note">{term && <Said of={term} field="definition" />}</span>
            </span>
          </label>
        )
      })}
    </Group>
  )
}
