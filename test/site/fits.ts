import type { Page } from 'playwright-core'

/**
 * Tells what of an open page is lost at its present size: what makes the page scroll sideways, words cut off by their
 * box, words over other words, controls over other controls.
 */
export async function lost(page: Page): Promise<string[]> {
  await drawAll(page)
  return page.evaluate(lostHere)
}

/** Has all of a page laid out: what is only drawn once it is scrolled to hides whatever is wrong with it. */
export const drawAll = (page: Page): Promise<void> =>
  page.evaluate(() => {
    const sheet = new CSSStyleSheet()
    sheet.replaceSync('* { content-visibility: visible !important }')
    document.adoptedStyleSheets = [...document.adoptedStyleSheets, sheet]
  })

/** Runs in the page, so it may use nothing of this file. */
function lostHere(): string[] {
  /** Pixels by which type and rounding may go over. */
  const SLACK = 2
  const found: string[] = []
  const excess = document.documentElement.scrollWidth - window.innerWidth
  if (excess > 0) found.push(`${excess} px wider than the window`)

  const seen = (element: Element) =>
    element.checkVisibility({ contentVisibilityAuto: true, visibilityProperty: true, opacityProperty: true })
  const styles = new Map<Element, CSSStyleDeclaration>()
  const styleOf = (element: Element) => {
    const known = styles.get(element) ?? getComputedStyle(element)
    styles.set(element, known)
    return known
  }
  /** Whether an element or one around it answers; each is asked once. */
  const within = (answers: (element: Element) => boolean) => {
    const known = new Map<Element, boolean>()
    const ask = (element: Element | null): boolean => {
      if (element === null) return false
      const before = known.get(element)
      if (before !== undefined) return before
      const answer = answers(element) || ask(element.parentElement)
      known.set(element, answer)
      return answer
    }
    return ask
  }
  // Words for the ear alone, and what lies over the page on purpose.
  const forEars = within((element) => styleOf(element).clipPath !== 'none')
  const floats = within((element) => ['sticky', 'fixed'].includes(styleOf(element).position))
  const scrolls = within((element) => ['auto', 'scroll'].includes(styleOf(element).overflowX))
  const say = (element: Element) =>
    `${element.tagName.toLowerCase()}${element.id ? `#${element.id}` : ''} “${(element.textContent ?? '').trim().slice(0, 50)}”`

  for (const element of document.body.querySelectorAll('*')) {
    if (!(element instanceof HTMLElement) || !element.textContent?.trim()) continue
    const style = styleOf(element)
    if (style.contentVisibility === 'auto') found.push(`not drawn: ${say(element)}`)
    const cuts = (overflow: string) => overflow === 'hidden' || overflow === 'clip'
    if (!cuts(style.overflowX) && !cuts(style.overflowY)) continue
    if (forEars(element) || !seen(element)) continue
    const over =
      (cuts(style.overflowX) && element.scrollWidth > element.clientWidth + SLACK) ||
      (cuts(style.overflowY) && element.scrollHeight > element.clientHeight + SLACK)
    if (over) found.push(`cut off: ${say(element)}`)
  }

  interface Piece {
    element: Element
    left: number
    right: number
    top: number
    bottom: number
  }
  const piecesOf = (element: Element, of: Element | Range): Piece[] =>
    [...of.getClientRects()]
      .filter(({ width, height }) => width > SLACK && height > SLACK)
      .map(({ left, right, top, bottom }) => ({ element, left, right, top, bottom }))
  /** Pairs of which the one lies over the other by more than a share of the smaller one's height. */
  const overlaps = (pieces: Piece[], share: number, what: string) => {
    pieces.sort((a, b) => a.top - b.top)
    pieces.forEach((a, at) => {
      for (const b of pieces.slice(at + 1)) {
        if (b.top >= a.bottom) break
        if (a.element.contains(b.element) || b.element.contains(a.element)) continue
        const across = Math.min(a.right, b.right) - Math.max(a.left, b.left)
        const down = Math.min(a.bottom, b.bottom) - b.top
        if (across > SLACK && down > share * Math.min(a.bottom - a.top, b.bottom - b.top) + SLACK)
          found.push(`${what}: ${say(a.element)} and ${say(b.element)}`)
      }
    })
  }

  const lines: Piece[] = []
  const texts = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT)
  const range = document.createRange()
  for (let text = texts.nextNode(); text; text = texts.nextNode()) {
    const element = text.parentElement
    if (!element || !text.textContent?.trim() || ['SCRIPT', 'STYLE', 'OPTION'].includes(element.tagName))
      continue
    if (!seen(element) || forEars(element) || floats(element)) continue
    range.selectNodeContents(text)
    const pieces = piecesOf(element, range)
    if (
      !scrolls(element) &&
      pieces.some(({ left, right }) => left < -SLACK || right > window.innerWidth + SLACK)
    )
      found.push(`outside the window: ${say(element)}`)
    lines.push(...pieces)
  }
  // A line's box is a third higher than its letters.
  overlaps(lines, 0.4, 'words over words')

  const controls: Piece[] = []
  for (const element of document.querySelectorAll('a[href], button, input, select, textarea, summary')) {
    const inline = styleOf(element).display === 'inline'
    if (inline || !seen(element) || forEars(element) || floats(element)) continue
    controls.push(...piecesOf(element, element))
  }
  overlaps(controls, 0.1, 'controls over controls')
  return [...new Set(found)]
}
