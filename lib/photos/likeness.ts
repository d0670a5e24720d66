/** Greyscale picture, `HASH_WIDTH` by `HASH_HEIGHT`, that a likeness is taken from. */
export const HASH_WIDTH = 9
export const HASH_HEIGHT = 8

/**
 * A 64-bit difference hash as 16 hexadecimal digits: whether each of 9 by 8 grey pixels is lighter than the one
 * to its right. Scaling, re-encoding and a change of light leave most bits as they are.
 *
 * @param grey one byte a pixel, row by row
 */
export function likenessOf(grey: Uint8Array): string {
  if (grey.length !== HASH_WIDTH * HASH_HEIGHT) throw new RangeError('a likeness is taken from 9 by 8 pixels')
  let bits = 0n
  for (let row = 0; row < HASH_HEIGHT; row += 1)
    for (let column = 0; column < HASH_WIDTH - 1; column += 1) {
      const at = row * HASH_WIDTH + column
      bits = (bits << 1n) | (Number(grey[at]) > Number(grey[at + 1]) ? 1n : 0n)
    }
  return bits.toString(16).padStart(16, '0')
}
