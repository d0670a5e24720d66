import type { Range } from '#lib/mortar/range.ts'
import { convert, convertRange, shownUnit } from '#lib/mortar/units.ts'
import { Quantity, quantityText } from '../../../_ui/quantity.tsx'
import type { System } from '../../../_ui/systems.ts'

/**
 * A metric quantity in the units that the reader works in.
 *
 * @param props.liquid is it water?
 */
export function Shown({
  value,
  unit,
  system,
  large,
  liquid,
}: {
  value: Range
  unit: string
  system: System
  large?: boolean
  liquid?: boolean
}) {
  const shown = shownFor(value.typical, unit, system, liquid)
  return (
    <Quantity
      value={shown === unit ? value : convertRange(value, unit, shown)}
      unit={shown}
      {...(large && { large })}
    />
  )
}

/** The same as text, without its range. */
export function shownText(value: Range, unit: string, system: System, liquid?: boolean): string {
  const shown = shownFor(value.typical, unit, system, liquid)
  return quantityText(shown === unit ? value : convertRange(value, unit, shown), shown).main
}

/** A number that someone entered, as they meant it: not rounded to what a range can bear. */
export const exactText = (value: number, unit: string, system: System): string => {
  const shown = shownUnit(unit, system)
  return quantityText(shown === unit ? value : convert(value, unit, shown), shown).main
}

/** Cubic feet from a cubic yard up are shown as cubic yards, as they are ordered. */
function shownFor(value: number, unit: string, system: System, liquid?: boolean): string {
  const shown = shownUnit(unit, system, liquid)
  return shown === 'ft3' && convert(value, unit, 'yd3') >= 1 ? 'yd3' : shown
}
