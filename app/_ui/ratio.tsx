import type { Range } from '#lib/mortar/range.ts'
import { ratioWords } from './ratio-text.ts'

/** So many measures to one of lime: `1 : 3.1 (2.8–3.5)`. */
export function Ratio({ value }: { value: Range }) {
  const { main, range } = ratioWords(value)
  return (
    <span className="quantity">
      <span className="quantity-main">{main}</span>
      {range !== null && <span className="quantity-range"> {range}</span>}
    </span>
  )
}
