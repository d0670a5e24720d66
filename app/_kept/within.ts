import {
  bytesOf,
  type KeptBlock,
  type KeptFigures,
  MOST_BYTES,
  MOST_PRINTED,
  makeKeptFigures,
} from '#lib/entry/kept-sheet.ts'
import { words } from '../_words/index.ts'
import { printedLines } from './printed.ts'

/** All that is kept of a sheet; or, of one that is larger than may be kept, that it is. */
export type Within =
  | { readonly ok: true; readonly figures: KeptFigures }
  | { readonly ok: false; readonly sentences: string[] }

/**
 * Makes of the parts of a sheet what is kept of it, within its bounds.
 *
 * @param openDigest of the same sheet without costs, where it has some
 */
export function within(inputs: readonly string[], blocks: readonly KeptBlock[], openDigest?: string): Within {
  const printed = printedLines(blocks)
  if (printed.length <= MOST_PRINTED) {
    const figures = makeKeptFigures({
      inputs,
      blocks,
      printed,
      ...(openDigest !== undefined && { openDigest }),
    })
    if (bytesOf(figures) <= MOST_BYTES) return { ok: true, figures }
  }
  return { ok: false, sentences: [words('kept')('new.tooLarge')] }
}
