/** Longest word that is compared. */
const LONGEST = 80

// Three rows of the table, used again by every call: nothing here waits, so no two calls meet.
let before = new Uint8Array(LONGEST + 1)
let last = new Uint8Array(LONGEST + 1)
let row = new Uint8Array(LONGEST + 1)

/**
 * How many single letters must be put in, left out, changed or swapped with a neighbour to turn one word into
 * another; a pair of neighbours is swapped at most once. Gives up beyond `most` and answers `most + 1`.
 *
 * @param most below 100
 */
export function editDistance(a: string, b: string, most: number): number {
  if (b.length - a.length > most || !fill(a, b, most)) return most + 1
  return Math.min(at(last, b.length), most + 1)
}

/** {@link editDistance} from what is typed so far to whichever beginning of a word is nearest to it. */
export function beginningDistance(typed: string, word: string, most: number): number {
  const start = word.slice(0, typed.length + most)
  if (!fill(typed, start, most)) return most + 1
  let least = most + 1
  for (let j = 0; j <= start.length; j += 1) least = Math.min(least, at(last, j))
  return least
}

/** Fills the table up to its last row, from all of `a` to each beginning of `b`; false once all are beyond `most`. */
function fill(a: string, b: string, most: number): boolean {
  if (a.length - b.length > most || Math.max(a.length, b.length) > LONGEST) return false
  for (let j = 0; j <= b.length; j += 1) last[j] = j
  for (let i = 1; i <= a.length; i += 1) {
    row[0] = i
    let least = i
    for (let j = 1; j <= b.length; j += 1) {
      const isSame = a.charCodeAt(i - 1) === b.charCodeAt(j - 1)
      let cost = Math.min(at(last, j), at(row, j - 1)) + 1
      cost = Math.min(cost, at(last, j - 1) + (isSame ? 0 : 1))
      const isSwapped = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]
      if (isSwapped) cost = Math.min(cost, at(before, j - 2) + 1)
      row[j] = cost
      if (cost < least) least = cost
    }
    if (least > most) return false
    ;[before, last, row] = [last, row, before]
  }
  return true
}

const at = (cells: Uint8Array, index: number): number => cells[index] ?? 0

/** How many slips are forgiven in a word of this length. */
export const slipsFor = (length: number): number => (length < 4 ? 0 : length < 7 ? 1 : 2)

/** The known word closest to what was given, where one is close. */
export function nearest(given: string, known: Iterable<string>): string | undefined {
  const most = Math.max(1, slipsFor(given.length) + 1)
  let best: { word: string; distance: number } | undefined
  for (const word of known) {
    const distance = editDistance(given.toLowerCase(), word.toLowerCase(), most)
    if (distance <= most && (best === undefined || distance < best.distance)) best = { word, distance }
  }
  return best?.word
}
