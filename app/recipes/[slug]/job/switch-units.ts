import { shownUnit } from '#lib/mortar/units.ts'
import { markName, type Typed } from '../../../_http/form.ts'
import { retypedText } from '../../../_ui/amount-text.ts'
import type { System } from '../../../_ui/systems.ts'
import type { ReadField } from './read-inputs.ts'

/**
 * What was typed, in the units of another system: figures are converted, never read as if they had been typed in the
 * other unit. Undefined while a figure that would change can't be read: then nothing changes.
 */
export function switchUnits(typed: Typed, fields: readonly ReadField[], to: System): Typed | undefined {
  const { in: _, ...switched } = { ...typed, units: to } as Record<string, string>
  for (const { name, unit, askedUnit, read } of fields) {
    const wanted = shownUnit(unit, to)
    if (wanted === askedUnit || read.text === '') continue
    if (!read.amount) return undefined
    switched[name] = retypedText(read.amount, askedUnit, wanted)
    delete switched[markName(name)]
  }
  return switched
}
