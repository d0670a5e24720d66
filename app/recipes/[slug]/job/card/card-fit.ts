/** What stands on a card, as far as its length goes. */
export interface CardTexts {
  readonly title: string
  /** Why a recipe is not in use; nothing for one that is. */
  readonly standing: string
  readonly cautions: readonly string[]
  readonly loads: string
  /** Names of what is measured, water with them. */
  readonly rows: readonly string[]
  readonly below: string
  readonly steps: readonly string[]
  readonly foot: string
}

/** Sizes that `card.css` knows, in per cent of its usual type, the largest first. */
export const CARD_FITS = [130, 125, 120, 115, 110, 105, 100, 95, 90, 85, 80, 75, 70, 65, 60] as const

/** A5 less its margins, in points, and a little left over, since lines are counted and not set. */
const PAGE = 550 - 14

/**
 * The largest type in which all of a card stands on one page, in per cent: a short recipe is read from further away.
 * Letters to a line and heights of lines are those of `card.css` at 100.
 */
export const cardFit = (texts: CardTexts): (typeof CARD_FITS)[number] =>
  CARD_FITS.find((fit) => heightOf(texts, fit / 100) <= PAGE) ?? 60

/** Letters beside a name that its figure and range take. */
const FIGURE = 18

function heightOf(texts: CardTexts, fit: number): number {
  const lines = (text: string, letters: number) => Math.ceil((text.length * fit) / letters)
  const all = (list: readonly string[], letters: number) =>
    list.reduce((sum, text) => sum + lines(text, letters), 0)
  const rows = texts.rows.reduce(
    (sum, name) => sum + 19.2 * lines(name.padEnd(name.length + FIGURE), 47) + 5.3,
    0,
  )
  const standing = texts.standing === '' ? 0 : 17.2 + 11.4 * lines(texts.standing, 74)
  const boxed = 11.5 + 14.4 + 11.4 * all(texts.cautions, 70)
  const load = 14.4 * lines(texts.loads, 52) + rows + 12 * lines(texts.below, 74)
  const steps = 14.4 + 12.6 * all(texts.steps, 69)
  const gaps = 4 * 5.7
  return (
    fit *
    (18 * lines(texts.title, 38) + standing + boxed + load + steps + 8.4 * lines(texts.foot, 105) + gaps)
  )
}
