import { mkdirSync, readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { fileURLToPath } from 'node:url'
import type { AxeResults, RunOptions } from 'axe-core'
import type { Page } from 'playwright-core'
import { drawAll } from './fits.ts'

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8')

/** Nobody looks at more of a page at once, and drawing all of a long one took a second. */
const TALLEST = 4000

/** Pictures to look at; kept out of the history. */
const FOLDER = fileURLToPath(new URL('../artefacts/screens/', import.meta.url))

/** Widths in pixels, each with the colours it is seen in: pairs rather than every combination. */
const VIEWS = [
  { width: 320, colorScheme: 'light', media: 'screen', picture: false },
  { width: 360, colorScheme: 'light', media: 'screen', picture: true },
  { width: 768, colorScheme: 'dark', media: 'screen', picture: true },
  { width: 1280, colorScheme: 'light', media: 'screen', picture: true },
  /** A4 between its margins. */
  { width: 688, colorScheme: 'light', media: 'print', picture: true },
] as const

/**
 * Looks over an open page as a reader would who sees it wide and narrow, dark and on paper, or has it read out: takes
 * pictures (`<name>-<width>.jpg`) and tells what is wrong, each with its place. Leaves it light, on a screen. A state of
 * a page needs no name: then no picture is taken, and of the dark colours it has those that its page was seen in.
 */
export async function lookOver(page: Page, name?: string): Promise<string[]> {
  const found = await lookAround(page, name)
  return [...found, ...(await violations(page, {}))]
}

/** The same without axe in light colours, for where `lookCloser` has it look at all that is unfolded. */
export async function lookAround(page: Page, name?: string): Promise<string[]> {
  const before = page.viewportSize()
  const found: string[] = []
  await drawAll(page)
  for (const { width, colorScheme, media, picture } of VIEWS) {
    await page.emulateMedia({ media, colorScheme })
    await page.setViewportSize({ width, height: 900 })
    const excess = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth)
    if (excess > 0) found.push(`${excess} px wider than its window of ${width} px (${media})`)
    if (picture && name !== undefined)
      await takePicture(page, `${name}-${media === 'print' ? 'print' : width}`)
    if (colorScheme === 'dark' && name !== undefined)
      found.push(...(await violations(page, { runOnly: ['color-contrast'] })))
  }
  await page.emulateMedia({ media: 'screen', colorScheme: 'light' })
  if (before) await page.setViewportSize(before)
  return found
}

/** Takes a picture of an open page from its top, `<name>.jpg`. */
export async function takePicture(page: Page, name: string): Promise<void> {
  mkdirSync(FOLDER, { recursive: true })
  const [width, tall] = await page.evaluate(
    () => [window.innerWidth, document.documentElement.scrollHeight] as const,
  )
  const clip = { x: 0, y: 0, width, height: Math.min(tall, TALLEST) }
  await page.screenshot({ path: `${FOLDER}${name}.jpg`, type: 'jpeg', quality: 70, fullPage: true, clip })
}

/** What axe finds wrong, with the first places of each. It is handed to the page past the policy, not by it. */
export async function violations(page: Page, options: RunOptions): Promise<string[]> {
  if (!(await page.evaluate(() => 'axe' in window))) await page.evaluate(axe)
  const run = `axe.run(${JSON.stringify({ ...options, resultTypes: ['violations'] })})`
  const { violations: rules } = (await page.evaluate(run)) as AxeResults
  return rules.map(
    ({ id, nodes }) =>
      `${id}: ${nodes
        .slice(0, 3)
        .map(({ html }) => html.slice(0, 160))
        .join(' | ')}`,
  )
}
