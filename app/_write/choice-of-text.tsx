import { words } from '../_words/index.ts'

interface Side {
  readonly value: string
  readonly label: string
  readonly text: string
}

/** Texts of one field, one of which is to be kept. Nothing is chosen beforehand. */
export const ChoiceOfText = (props: { name: string; label: string; sides: readonly Side[] }) => (
  <fieldset className="write-choice">
    <legend>{props.label}</legend>
    {props.sides.map(({ value, label, text }) => (
      <label key={value} className="choice">
        <input type="radio" name={props.name} value={value} />
        <span>
          <span className="block note">{label}</span>
          <span className="block write-text">{text === '' ? words('write')('both.blank') : text}</span>
        </span>
      </label>
    ))}
  </fieldset>
)
