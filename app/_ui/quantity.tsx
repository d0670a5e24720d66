import type { Range } from '#lib/mortar/range.ts'
import { formatNumber, printedRange } from '../_words/format.ts'
import { words } from '../_words/index.ts'
import { isUnit, UNIT_WORDS } from './units.ts'

/** A figure with its unit, as text: `12.5 kg`. Unknown units are a fault of ours. */
export function withUnit(figure: string, unit: string): string {
  if (!isUnit(unit)) throw new RangeError(`no word for the unit ${unit}`)
  return words('common')(`units.${UNIT_WORDS[unit]}`, { figure })
}

/** What a quantity prints, as text: its typical value, and its range where it has one. */
export function quantityText(value: Range | number, unit: string, places?: number) {
  if (typeof value === 'number') return { main: withUnit(formatNumber(value, places), unit), range: null }
  const { low, typical, high, places: borne } = printedRange(value)
  if (low === high) return { main: withUnit(formatNumber(typical), unit), range: null }
  const [from, to] = [formatNumber(low, borne), formatNumber(high, borne)]
  return {
    main: withUnit(formatNumber(typical, borne), unit),
    range: words('common')('quantity.range', { low: from, high: to }),
  }
}

/**
 * The one way a number and its unit are printed: the typical value with its unit, then what it may lie
 * between. Ranges are rounded to what their width can bear; a plain number prints as it is.
 *
 * @param props.unit as the sums name it: `kg`, `m2`, `1` for none
 * @param props.places decimal places of a plain number, at most three when left out
 */
export function Quantity(props: { value: Range | number; unit: string; places?: number; large?: boolean }) {
  return (
    <QuantityTexts {...quantityText(props.value, props.unit, props.places)} large={props.large === true} />
  )
}

/** A figure that is text already, and what it may lie between. */
export const QuantityTexts = (props: { main: string; range: string | null; large?: boolean }) => (
  <span className={props.large === true ? 'quantity quantity-large' : 'quantity'}>
    <span className="quantity-main">{props.main}</span>
    {props.range !== null && <span className="quantity-range"> {props.range}</span>}
  </span>
)
