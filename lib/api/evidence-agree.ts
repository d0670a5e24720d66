import { DAMP_STATES, JOINT_STATES, UNIT_STATES } from '#lib/entry/terms.ts'
import { type Agreement, cohenKappa, fleissKappa } from '#lib/evidence/index.ts'
import type { SharedVisit } from '#lib/search/works.ts'

const SCALES = {
  joint: JOINT_STATES.length,
  unit: UNIT_STATES.length,
  damp: DAMP_STATES.length,
} as const
export type AgreedScale = keyof typeof SCALES

/** How far people who read one visit on the same scale agree. */
export interface ScaleAgreement {
  readonly scale: AgreedScale
  /** Visits on which all gave the same state. */
  readonly same: number
  /** Fleiss' kappa of all readings; null where it is not defined. */
  readonly fleiss: Agreement | null
  /** Cohen's kappa of the writer and the first of the others, near steps counted in part. */
  readonly cohen: Agreement | null
}

export interface Agreements {
  readonly visits: number
  readonly scales: readonly ScaleAgreement[]
}

/** Agreement on each scale over visits that several people read. */
export const agreementOf = (shared: readonly SharedVisit[]): Agreements => ({
  visits: shared.length,
  scales: (Object.keys(SCALES) as AgreedScale[]).map((scale) => {
    const readings = shared.map((visit) => visit[scale])
    const steps = SCALES[scale]
    return {
      scale,
      same: readings.filter((steps) => new Set(steps).size === 1).length,
      fleiss: fleissKappa(readings.map((read) => countSteps(read, steps))),
      cohen: cohenKappa(pairTable(readings, steps), 'linear'),
    }
  }),
})

const countSteps = (read: readonly number[], steps: number) =>
  Array.from({ length: steps }, (_, step) => read.filter((one) => one === step).length)

function pairTable(readings: readonly (readonly number[])[], steps: number): number[][] {
  const table = Array.from({ length: steps }, () => new Array<number>(steps).fill(0))
  for (const [first, second] of readings) {
    const row = table[first ?? -1]
    if (row !== undefined && second !== undefined) row[second] = (row[second] ?? 0) + 1
  }
  return table
}
