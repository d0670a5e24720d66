/** Stands in a kept sheet where words were taken out for a lawful reason; the database knows it too. */
export const STRUCK = '[…]'

/** From so many characters on, words that stand within others are taken for the same telling. */
const TELLING = 8

/** A text without these words, wherever they stand in it; short ones only where they are all of it. */
export const strike = (text: string, words: readonly string[]): string =>
  words.reduce((left, word) => {
    if (left.trim() === word) return STRUCK
    return word.length < TELLING ? left : left.replaceAll(word, STRUCK)
  }, text)

const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

/** Stored figures of any form, with these words taken out of their notices. All else stays as it is. */
export function withNoticesStruck(figures: unknown, words: readonly string[]): unknown {
  if (!isRecord(figures) || !Array.isArray(figures.blocks)) return figures
  const blocks = figures.blocks.map((block: unknown) =>
    isRecord(block) && block.kind === 'notice' && typeof block.text === 'string'
      ? { ...block, text: struckWithin(block.text, words) }
      : block,
  )
  return { ...figures, blocks }
}

/** The reason for a standing stands in front of other words, however short it is. */
const struckWithin = (text: string, words: readonly string[]): string =>
  words.reduce(
    (left, word) =>
      left.startsWith(`${word} `) ? `${STRUCK}${left.slice(word.length)}` : strike(left, [word]),
    text,
  )
