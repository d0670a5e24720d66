import { formatNumber } from '../../../_words/format.ts'
import { words } from '../../../_words/index.ts'

/** Full loads and what is left of one; less than a load is one short load. */
export function loadsText(loads: number): string {
  const hundredths = Math.round(loads * 100)
  const full = Math.floor(hundredths / 100)
  const rest = hundredths % 100
  return words('job')('sheet.loadsValue', {
    full,
    rest: rest === 0 ? 'none' : formatNumber(rest),
  })
}
