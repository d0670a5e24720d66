import { type Agreement, add, report } from './agreement.ts'
import { LEVEL } from './distributions.ts'

/** What the kappa of all things rests on: how often two people agree on one, and would by chance. */
interface Parts {
  readonly agreed: number
  readonly byChance: number
  readonly kappa: number
}

/**
 * Fleiss' kappa (1971) of several people, not always the same ones, who scored things on one scale. Its limits
 * come from leaving out one thing at a time (the jackknife); the test against chance (Fleiss, Nee and Landis
 * 1979) needs equally many people for each. Null where it is not defined: fewer than two things that two
 * people scored, or one step only was used.
 *
 * @param counts for each thing how many people gave it each step; things with fewer than two scores say nothing
 */
export function fleissKappa(counts: readonly (readonly number[])[], level: number = LEVEL): Agreement | null {
  const scored = counts.filter((row) => add(row) >= 2)
  const sums = sumUp(scored)
  const all = partsOf(sums)
  if (scored.length < 2 || all === null) return null
  const n = scored.length
  const without = scored.flatMap((row) => partsOf(leaveOut(sums, row))?.kappa ?? [])
  // Where leaving one out leaves one step only, nothing can be said of how far kappa would move.
  if (without.length < n) return null
  const mean = add(without) / n
  const variance = ((n - 1) / n) * add(without.map((kappa) => (kappa - mean) ** 2))
  return report({ subjects: n, ...all, variance, nullVariance: nullVarianceOf(scored), level })
}

/** What kappa is made of, so that leaving one thing out need not look at all others. */
interface Sums {
  readonly things: number
  /** Of the shares of pairs of people who agreed. */
  readonly agreements: number
  readonly steps: readonly number[]
}

function sumUp(rows: readonly (readonly number[])[]): Sums {
  const steps = new Array<number>(Math.max(0, ...rows.map(({ length }) => length))).fill(0)
  for (const row of rows)
    row.forEach((count, step) => {
      steps[step] = (steps[step] ?? 0) + count
    })
  return { things: rows.length, agreements: add(rows.map(agreementOf)), steps }
}

const leaveOut = ({ things, agreements, steps }: Sums, row: readonly number[]): Sums => ({
  things: things - 1,
  agreements: agreements - agreementOf(row),
  steps: steps.map((count, step) => count - (row[step] ?? 0)),
})

function agreementOf(row: readonly number[]): number {
  const people = add(row)
  return add(row.map((count) => count * (count - 1))) / (people * (people - 1))
}

function partsOf({ things, agreements, steps }: Sums): Parts | null {
  if (things === 0) return null
  const total = add(steps)
  const agreed = agreements / things
  const byChance = add(steps.map((count) => (count / total) ** 2))
  if (1 - byChance < 1e-12) return null
  return { agreed, byChance, kappa: (agreed - byChance) / (1 - byChance) }
}

/** Share of all scores that each step took. */
function sharesOf(rows: readonly (readonly number[])[]): number[] {
  const total = add(rows.map(add))
  const steps = Math.max(...rows.map(({ length }) => length))
  return Array.from({ length: steps }, (_, step) => add(rows.map((row) => row[step] ?? 0)) / total)
}

function nullVarianceOf(rows: readonly (readonly number[])[]): number | null {
  const people = add(rows[0] ?? [])
  if (rows.some((row) => add(row) !== people)) return null
  const shares = sharesOf(rows)
  const spread = add(shares.map((share) => share * (1 - share)))
  const skew = add(shares.map((share) => share * (1 - share) * (1 - 2 * share)))
  return (2 * (spread * spread - skew)) / (rows.length * people * (people - 1) * spread * spread)
}
