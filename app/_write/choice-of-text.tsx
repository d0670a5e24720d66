import { words } from '../_words/index.ts'

export interface Side {
  readonly value: string
  readonly label: string
  readonly text: string
}

interface Props {
  readonly name: string
  readonly label: string
  readonly sides: readonly Side[]
  /** What was chosen before. */
  readonly chosen?: unknown
  /** Nothing is done until one is chosen. */
  readonly needed?: boolean
}

/** Texts of one field, one of which is to be kept. Nothing is chosen beforehand. */
export const ChoiceOfText = ({ name, label, sides, chosen, needed = false }: Props) => (
  <fieldset className="write-choice" id={`field-${name}`} tabIndex={-1}>
    <legend>{label}</legend>
    {sides.map(({ value, label: side, text }) => (
      <label key={value} className="choice">
        <input type="radio" name={name} value={value} defaultChecked={chosen === value} required={needed} />
        <span>
          <span className="block note">{side}</span>
          <span className="block write-text">{text === '' ? words('write')('both.blank') : text}</span>
        </span>
      </label>
    ))}
  </fieldset>
)
