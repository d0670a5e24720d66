import type { Range } from '#lib/mortar/range.ts'
import { moneyText } from '../../../_ui/money-text.ts'
import { QuantityTexts } from '../../../_ui/quantity.tsx'
import { words } from '../../../_words/index.ts'

/** An amount in the reader's own currency, with its range. */
export function Money({ value, currency }: { value: Range; currency: string }) {
  const { main, range } = moneyText(value)
  return <QuantityTexts main={words('job')('sheet.money', { figure: main, currency })} range={range} />
}
