import { pause } from './pause.ts'

/** One facet that is chosen from: by documents' codes. */
export interface Test<F = unknown> {
  readonly facet: F
  /** What was chosen of it, as one text. */
  readonly chosen: string
  readonly codes: Uint16Array | Uint32Array
  /** 1 for each code that fits. */
  readonly fits: Uint8Array
}

export interface Picked {
  readonly lists: readonly Int32Array[]
  /** How many the lists hold. */
  readonly size: number
  /** All else. */
  others(): readonly Int32Array[]
}

/** Documents by what they fail of some tests. */
export interface Groups {
  /** Ids that fail the nth test alone, sorted; of 0, those that fail none. */
  of(test: number): Int32Array
  /** What fits all tests but perhaps this one; 0 for no test. */
  pick(test: number): Picked
}

/** What fails two or more. */
const TWO = 255

/**
 * Groups a list of documents by what they fail. Each is looked at once for each test: what fails none is found; what
 * fails exactly one counts under that one's facet alone.
 *
 * @param ids sorted
 */
export async function groupListed(ids: Int32Array, tests: readonly Test[]): Promise<Groups> {
  const fails = new Uint8Array(tests.length === 0 ? 0 : ids.length)
  for (const [i, test] of tests.entries()) {
    mark(ids, fails, test, i + 1)
    await pause(ids.length)
  }
  return group(ids, fails)
}

/** Notes what fails the nth test: 0 fails nothing so far, n this one alone, {@link TWO} more than one. */
function mark(ids: Int32Array, fails: Uint8Array, { codes, fits }: Test, test: number): void {
  // By tables, without a branch: which way each document goes cannot be foretold.
  const next = new Uint8Array(512).fill(TWO, 256)
  for (let state = 0; state < 256; state += 1) next[state] = state
  next[256] = test
  const missed = Uint16Array.from(fits, (fit) => (fit === 1 ? 0 : 256))
  for (let i = 0; i < ids.length; i += 1)
    fails[i] = next[(fails[i] as number) + (missed[codes[ids[i] as number] as number] as number)] as number
}

/** The ids by what they fail, each group sorted. */
function group(ids: Int32Array, fails: Uint8Array): Groups {
  const starts = new Uint32Array(258)
  const sorted = fails.length === 0 ? ids : new Int32Array(ids.length)
  if (fails.length === 0) starts.fill(ids.length, 1)
  else {
    for (let i = 0; i < fails.length; i += 1) {
      const end = (fails[i] as number) + 1
      starts[end] = (starts[end] as number) + 1
    }
    for (let i = 1; i < 258; i += 1) starts[i] = (starts[i] as number) + (starts[i - 1] as number)
    const ends = starts.slice()
    for (let i = 0; i < ids.length; i += 1) {
      const state = fails[i] as number
      const at = ends[state] as number
      sorted[at] = ids[i] as number
      ends[state] = at + 1
    }
  }
  const of = (state: number) => sorted.subarray(starts[state], starts[state + 1])
  return {
    of,
    pick(test) {
      const lists = test === 0 ? [of(0)] : [of(0), of(test)]
      const others =
        test === 0
          ? [sorted.subarray(starts[1])]
          : [sorted.subarray(starts[1], starts[test]), sorted.subarray(starts[test + 1])]
      return { lists, others: () => others, size: lists.reduce((sum, { length }) => sum + length, 0) }
    },
  }
}
