import { MOLAR_MASS } from './constants.ts'
import { attempt, type Outcome } from './fault.ts'
import { inspect } from './inspect.ts'
import type { Range } from './range.ts'
import { spread } from './spread.ts'

/**
 * What a limestone's clay makes of the lime burnt from it: its silica with alumina, %, and Candlot's index.
 * Takes the clay as dry silica and alumina and all else as calcium carbonate, wholly burnt.
 *
 * @param clayInStone % of the stone by mass; 0 to below 100
 */
export function burnStone(clayInStone: Range): Outcome<{ oxides: Range; candlotIndex: Range }> {
  return attempt(() => {
    const check = inspect()
    check.range('clayInStone', clayInStone, { min: 0, max: 99, unit: '%' })
    check.finish()
    return spread({ clayInStone }, ({ clayInStone: clay }) => {
      const cao = ((100 - clay) * MOLAR_MASS.CaO) / MOLAR_MASS.CaCO3
      return { oxides: (100 * clay) / (clay + cao), candlotIndex: clay / cao }
    })
  })
}
