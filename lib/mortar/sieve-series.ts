import type { Basis } from './range.ts'

/** Openings in mm, coarsest first, as a stack for sand is built. */
export const SIEVE_SERIES = {
  /** EN 933-1 with the basic set of EN 933-2. */
  en: [8, 4, 2, 1, 0.5, 0.25, 0.125, 0.063],
  /** ASTM C136 with the sieves of E11: No. 4, 8, 16, 30, 50, 100, 200. */
  astm: [4.75, 2.36, 1.18, 0.6, 0.3, 0.15, 0.075],
} as const

interface FinenessDefinition {
  readonly id: 'astm-c136' | 'en-12620'
  /** Cumulative shares retained on these are summed and divided by 100. */
  readonly openingsMm: readonly number[]
  readonly basis: Basis
  readonly source?: string
}

/** A fineness modulus leaves out all sieves that its definition does not name, 75 µm and 63 µm above all. */
export const FINENESS_DEFINITIONS: readonly FinenessDefinition[] = [
  {
    id: 'astm-c136',
    openingsMm: [150, 75, 37.5, 19, 9.5, 4.75, 2.36, 1.18, 0.6, 0.3, 0.15],
    basis: 'quoted',
    source: 'astm-c136',
  },
  { id: 'en-12620', openingsMm: [4, 2, 1, 0.5, 0.25, 0.125], basis: 'memory' },
]

export interface FinenessSet {
  readonly id: FinenessDefinition['id']
  /** Which rows of the stack count. */
  readonly rows: readonly number[]
}

/** A stack that starts finer than this cannot show how much of a sand its definition would retain. */
const COARSEST_NEEDED_MM = 4

/**
 * The fineness moduli that a stack can give. The definition's sieves coarser than the stack's first are
 * taken to hold nothing; one missing within the stack rules that definition out.
 */
export function finenessSets(openings: readonly number[]): FinenessSet[] {
  return FINENESS_DEFINITIONS.flatMap(({ id, openingsMm }) => {
    const coarsest = openingsMm.find((opening) => openings.includes(opening)) ?? 0
    const needed = openingsMm.filter((opening) => opening <= coarsest)
    if (coarsest < COARSEST_NEEDED_MM || !needed.every((opening) => openings.includes(opening))) return []
    return [{ id, rows: needed.map((opening) => openings.indexOf(opening)) }]
  })
}

/** The most that may vanish between the first weighing and the last, % of the first. */
export const LOSS_LIMITS = [
  { id: 'astm-c136', percent: 0.3, basis: 'quoted', source: 'astm-c136' },
  { id: 'en-933-1', percent: 1, basis: 'memory', source: null },
] as const satisfies readonly {
  readonly id: string
  readonly percent: number
  readonly basis: Basis
  readonly source: string | null
}[]
