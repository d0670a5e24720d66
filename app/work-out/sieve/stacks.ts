import { SIEVE_SERIES } from '#lib/mortar/sieve-series.ts'
import { withUnit } from '../../_ui/quantity.tsx'
import { formatNumber } from '../../_words/format.ts'
import { words } from '../../_words/index.ts'

/** Stacks whose sieves are known, and one whose openings are typed. */
export const NAMED_STACKS = ['en', 'astm'] as const
export const STACKS = [...NAMED_STACKS, 'own'] as const
export type NamedStack = (typeof NAMED_STACKS)[number]
export type Stack = (typeof STACKS)[number]

/** Sieves are numbered too in the series of ASTM E11. */
const NUMBERS: Readonly<Record<string, number>> = {
  '4.75': 4,
  '2.36': 8,
  '1.18': 16,
  '0.6': 30,
  '0.3': 50,
  '0.15': 100,
  '0.075': 200,
}

/** Openings in mm, coarsest first. */
export const openingsOf = (stack: NamedStack): readonly number[] => SIEVE_SERIES[stack]

/** A sieve by its opening, with its number where the stack has numbers. */
export function sieveName(mm: number, stack: Stack): string {
  const size = withUnit(formatNumber(mm), 'mm')
  const number = stack === 'astm' ? NUMBERS[mm] : undefined
  return number === undefined ? size : words('workOut')('sieve.numbered', { size, number: String(number) })
}

/** Masses in g typed in advance: sands made up for the purpose, on each sieve and, last, in the pan. */
export const EXAMPLES: Readonly<Record<NamedStack, readonly (readonly number[])[]>> = {
  en: [
    [0, 0, 22, 92, 150, 160, 58, 14, 4],
    [0, 0, 60, 120, 150, 110, 40, 14, 6],
    [0, 0, 4, 20, 76, 210, 150, 30, 10],
    [0, 2, 10, 30, 60, 120, 180, 70, 28],
  ],
  astm: [
    [5, 38, 82, 130, 152, 66, 18, 8],
    [0, 55, 110, 150, 120, 45, 14, 6],
    [0, 4, 18, 80, 220, 140, 28, 10],
    [1, 10, 28, 64, 130, 180, 65, 22],
  ],
}
