const FIRST = 100
const LAST = 999

/**
 * Number of the item that a picture becomes in a form, told by its digest: two windows that add the same one make one
 * item of it, and two that add different ones keep both.
 *
 * @param taken numbers of the items that hold other pictures
 */
export function photoNumber(sha256: string, taken: ReadonlySet<number>): number {
  let number = FIRST + (Number.parseInt(sha256.slice(0, 8), 16) % (LAST - FIRST + 1))
  while (taken.has(number)) number = number === LAST ? FIRST : number + 1
  return number
}
