import type { Page } from 'playwright-core'
import { lost } from './fits.ts'
import { violations } from './look-over.ts'
import { sessionOf, unheard } from './names.ts'

/** Distances between letters, words and lines that nobody may lose words by: WCAG 2.2, 1.4.12. */
const SPACING = `* { line-height: 1.5 !important; letter-spacing: 0.12em !important; word-spacing: 0.16em !important }
  p { margin-bottom: 2em !important }`

/** A window of 1280 by 800 pixels enlarged twice, type alone enlarged twice, and type set wide, each with all unfolded. */
const ENLARGED = [
  { name: 'at 200 %', width: 640, height: 400 },
  { name: 'with type at 200 %', width: 1280, height: 800, type: 2 },
  { name: 'with type set wide', width: 320, height: 900, style: SPACING },
] as const

/**
 * Looks at an open page as those do who enlarge it, tap it with a broad finger, have it read out, unfold all of it or ask
 * for less motion, and tells what is wrong, each with its place. Leaves it folded as it was.
 */
export async function lookCloser(page: Page): Promise<string[]> {
  const before = page.viewportSize()
  await page.emulateMedia({ reducedMotion: 'reduce' })
  const found = await moving(page)
  await page.emulateMedia({ reducedMotion: null })
  await unfold(page)
  await page.setViewportSize({ width: 360, height: 900 })
  found.push(...(await violations(page, { rules: { 'target-size': { enabled: true } } })))
  found.push(...(await lostEnlarged(page)))
  if (before) await page.setViewportSize(before)
  found.push(...(await unheard(page)))
  await fold(page)
  return [...new Set(found)]
}

/** Opens what is folded, and marks it so that it can be folded again. */
const unfold = (page: Page) =>
  page.evaluate(() => {
    for (const folded of document.querySelectorAll<HTMLDetailsElement>('details:not([open])')) {
      folded.open = true
      folded.dataset.unfolded = ''
    }
  })

const fold = (page: Page) =>
  page.evaluate(() => {
    for (const unfolded of document.querySelectorAll<HTMLDetailsElement>('details[data-unfolded]')) {
      unfolded.open = false
      delete unfolded.dataset.unfolded
    }
  })

async function lostEnlarged(page: Page): Promise<string[]> {
  const session = await sessionOf(page)
  const found: string[] = []
  for (const view of ENLARGED) {
    const { name, width, height } = view
    const type = 'type' in view ? view.type : 1
    await session.send('Page.setFontSizes', { fontSizes: { standard: 16 * type, fixed: 13 * type } })
    await page.evaluate(
      (style) => {
        const sheet = new CSSStyleSheet()
        sheet.replaceSync(style)
        document.adoptedStyleSheets = [sheet]
      },
      'style' in view ? view.style : '',
    )
    await page.setViewportSize({ width, height })
    found.push(...(await lost(page)).map((one) => `${one} (${name})`))
  }
  await page.evaluate(() => {
    document.adoptedStyleSheets = []
  })
  return found
}

/** What still moves for somebody who asked for less motion. */
const moving = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const longest = (durations: string) => Math.max(...durations.split(',').map(Number.parseFloat))
    const moves = [...document.querySelectorAll('*')].filter((element) => {
      const { animationName, animationDuration, transitionDuration, scrollBehavior } =
        getComputedStyle(element)
      const animated = animationName !== 'none' && longest(animationDuration) > 0.01
      return animated || longest(transitionDuration) > 0.01 || scrollBehavior === 'smooth'
    })
    return moves.slice(0, 3).map((element) => `moves: ${element.outerHTML.slice(0, 120)}`)
  })
