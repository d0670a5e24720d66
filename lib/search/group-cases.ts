import { type Bits, idsOf, intersect, newBits, subtract } from './bits.ts'
import type { Columns } from './columns.ts'
import type { Groups, Test } from './group.ts'
import { pause } from './pause.ts'

/** As many sets are kept of what fits a choice: at a million documents 8 MB. */
const KEPT = 64

/** What fits each choice that was asked for last, as long as no document changes. */
interface Kept {
  readonly version: number
  readonly fitting: Map<string, Bits>
}
const kept = new WeakMap<Columns, Kept>()

/**
 * Groups all living cases by what they fail, as {@link groupListed} does a list of them. What fits a choice is one bit
 * a document: many people choose the same, and fields of bits are laid over one another 32 documents at a time.
 */
export async function groupCases(columns: Columns, tests: readonly Test[]): Promise<Groups> {
  // Of when the tests were made: their codes and what fits are of then.
  const { version } = columns
  const fitting: Bits[] = []
  for (const test of tests) fitting.push(await fittingBits(columns, version, test))
  const all = columns.cases.slice()
  for (const bits of fitting) intersect(all, bits)
  const alone = fitting.map((own) => {
    const failed = columns.cases.slice()
    for (const bits of fitting) (bits === own ? subtract : intersect)(failed, bits)
    return failed
  })
  const idsOnce = once((test) =>
    test === 0 ? (tests.length === 0 ? columns.caseIds() : idsOf(all)) : idsOf(alone[test - 1] as Bits),
  )
  const othersOnce = once((test) => {
    const left = columns.cases.slice()
    subtract(left, all)
    if (test !== 0) subtract(left, alone[test - 1] as Bits)
    return idsOf(left)
  })
  return {
    of: idsOnce,
    pick(test) {
      const lists = test === 0 ? [idsOnce(0)] : [idsOnce(0), idsOnce(test)]
      const size = lists.reduce((sum, { length }) => sum + length, 0)
      return { lists, size, others: () => [othersOnce(test)] }
    },
  }
}

/** Worked out when it is first asked for: most counts ask for the same. */
function once(work: (test: number) => Int32Array): (test: number) => Int32Array {
  const known = new Map<number, Int32Array>()
  return (test) => {
    const ids = known.get(test) ?? work(test)
    known.set(test, ids)
    return ids
  }
}

async function fittingBits(
  columns: Columns,
  version: number,
  { facet, chosen, codes, fits }: Test,
): Promise<Bits> {
  const known = kept.get(columns)
  const { fitting } = known?.version === version ? known : { fitting: new Map<string, Bits>() }
  const key = `${facet} ${chosen}`
  const bits = fitting.get(key) ?? marked(codes, fits)
  const isCurrent = columns.version === version
  if (!fitting.has(key)) await pause(bits.length * 32)
  // The one asked for last stands last; the first goes when there are too many.
  fitting.delete(key)
  fitting.set(key, bits)
  for (const oldest of fitting.keys()) {
    if (fitting.size <= KEPT) break
    fitting.delete(oldest)
  }
  // Not where a document came between: its bit is of before, or half of it.
  if (isCurrent && columns.version === version) kept.set(columns, { version, fitting })
  return bits
}

/** A bit for each document whose code fits. */
function marked(codes: Test['codes'], fits: Uint8Array): Bits {
  const bits = newBits(codes.length)
  for (let place = 0; place < bits.length; place += 1) {
    const first = place << 5
    let word = 0
    for (let i = 0; i < 32; i += 1) word |= (fits[codes[first + i] as number] as number) << i
    bits[place] = word
  }
  return bits
}
