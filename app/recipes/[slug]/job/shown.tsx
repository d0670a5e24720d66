import type { Range } from '#lib/mortar/range.ts'
import { convert, convertRange, shownUnit } from '#lib/mortar/units.ts'
import { Quantity, quantityText } from '../../../_ui/quantity.tsx'
import type { System } from './fields.ts'

/** A metric quantity in the units that the reader works in. */
export function Shown({
  value,
  unit,
  system,
  large,
}: {
  value: Range
  unit: string
  system: System
  large?: boolean
}) {
  const shown = shownUnit(unit, system)
  return (
    <Quantity
      value={shown === unit ? value : convertRange(value, unit, shown)}
      unit={shown}
      {...(large && { large })}
    />
  )
}

/** The same as text, without its range. */
export function shownText(value: Range, unit: string, system: System): string {
  const shown = shownUnit(unit, system)
  return quantityText(shown === unit ? value : convertRange(value, unit, shown), shown).main
}

/** A number that someone entered, as they meant it: not rounded to what a range can bear. */
export const exactText = (value: number, unit: string, system: System): string => {
  const shown = shownUnit(unit, system)
  return quantityText(shown === unit ? value : convert(value, unit, shown), shown).main
}
