import type { AmountAsked } from '../../_ui/workshop/asked.ts'
import { type Messages, words } from '../../_words/index.ts'

export type Label = keyof Messages['workOut']['subsoil']['hints']

/** A figure of the page, with its words. */
export const figure = (name: Label, unit: string): AmountAsked => ({
  kind: 'amount',
  name,
  label: words('workOut')(`subsoil.fields.${name}`),
  hint: words('workOut')(`subsoil.hints.${name}`),
  unit,
})
