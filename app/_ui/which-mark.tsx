import type { Range } from '#lib/mortar/range.ts'
import { MARKS, type Mark, markName } from '../_http/form.ts'
import { amountText } from './amount-text.ts'

/** Asks which of two figures was meant by one like `1,500`. */
export function WhichMark(props: {
  name: string
  /** The question. */
  legend: string
  readings: Readonly<Record<Mark, Range>>
  unit: Parameters<typeof amountText>[1]
  /** What it is read as so far. */
  amount: Range | undefined
  className: string
}) {
  const { name, legend, readings, unit, amount, className } = props
  return (
    <fieldset className={className}>
      <legend>{legend}</legend>
      {MARKS.map((mark) => (
        <label key={mark} className="choice">
          <input
            type="radio"
            name={markName(name)}
            value={mark}
            defaultChecked={amount?.low === readings[mark].low}
          />
          {amountText(readings[mark], unit)}
        </label>
      ))}
    </fieldset>
  )
}
