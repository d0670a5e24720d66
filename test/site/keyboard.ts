import type { Page } from 'playwright-core'
import { follow } from './browser.ts'

/** A page is never walked through for longer than this to find one thing. */
const MOST_STOPS = 400

/** One place where the focus stood. */
interface Stop {
  /** Whether it is what was looked for. */
  readonly here: boolean
  readonly at: string
  readonly wrong: readonly string[]
}

/** Somebody at a page who has no pointer. What they cannot see or reach is collected in `faults`. */
export interface Keys {
  readonly faults: string[]
  /** Presses Tab until the focus stands on what a selector means. */
  to(selector: string): Promise<void>
  /** Goes back the same way. */
  back(selector: string): Promise<void>
  /** Goes past the head of the page by its first link. */
  skip(): Promise<void>
  type(selector: string, text: string): Promise<void>
  /** Chooses of a list by its arrows. */
  choose(selector: string, value: string): Promise<void>
  /** Chooses one of several buttons by arrows, from where Tab enters them. */
  pick(name: string, value: string): Promise<void>
  tick(selector: string): Promise<void>
  /** Presses Enter on it. */
  press(selector: string): Promise<void>
  /** Presses Enter on what leads to another page, and waits for that. */
  go(selector: string): Promise<void>
  /** Says where the focus stands now: the id of the element, or its name. */
  standsAt(): Promise<string>
}

/** Takes the pointer away from a page; `to` looks at each stop on the way as somebody would who must see it. */
export function keysOf(page: Page): Keys {
  const faults: string[] = []
  const press = (key: string) => page.keyboard.press(key)
  const walk = async (selector: string, back: boolean) => {
    const seen: string[] = []
    await page.evaluate(forgetLeft)
    while (seen.length < MOST_STOPS) {
      await press(back ? 'Shift+Tab' : 'Tab')
      const stop = await page.evaluate(stand, { selector, back })
      faults.push(...stop.wrong.map((one) => `${new URL(page.url()).pathname}: ${stop.at}: ${one}`))
      if (stop.here) return
      seen.push(stop.at)
    }
    throw new Error(`Tab never comes to ${selector} on ${page.url()}; last ${seen.slice(-5).join(', ')}`)
  }
  const to = (selector: string) => walk(selector, false)
  const chosenOf = (selector: string) => page.locator(selector).first().inputValue()
  return {
    faults,
    to,
    back: (selector) => walk(selector, true),
    async skip() {
      await to('a.skip')
      await press('Enter')
    },
    async type(selector, text) {
      await to(selector)
      await press('ControlOrMeta+A')
      await page.keyboard.type(text)
    },
    async choose(selector, value) {
      await to(selector)
      await press('Home')
      for (let step = 0; (await chosenOf(selector)) !== value; step++) {
        if (step === MOST_STOPS) throw new Error(`${selector} has no ${value}`)
        await press('ArrowDown')
      }
    },
    async pick(name, value) {
      await to(`input[name="${name}"]`)
      const chosen = `input[name="${name}"][value="${value}"]`
      if (await page.locator(`${chosen}:focus`).count()) await press('Space')
      for (let step = 0; !(await page.locator(chosen).isChecked()); step++) {
        if (step === MOST_STOPS) throw new Error(`${name} has no ${value}`)
        await press('ArrowDown')
      }
    },
    async tick(selector) {
      await to(selector)
      await press('Space')
    },
    async press(selector) {
      await to(selector)
      await press('Enter')
    },
    async go(selector) {
      await to(selector)
      await follow(page, () => press('Enter'))
    },
    standsAt: () =>
      page.evaluate(() => {
        const { activeElement: at } = document
        return at?.id || at?.getAttribute('name') || (at?.tagName.toLowerCase() ?? '')
      }),
  }
}

/** Where the focus stood last, kept in the page between two looks. */
interface Memory {
  stoodAt?: { element: Element; top: number; left: number } | undefined
}

/** Runs in the page: what was left by other ways than Tab is not what the next stop follows. */
function forgetLeft(): void {
  const memory = window as Memory
  if (memory.stoodAt?.element !== document.activeElement) memory.stoodAt = undefined
}

/** Runs in the page: looks at where the focus stands. It may use nothing of this file. */
function stand({ selector, back }: { selector: string; back: boolean }): Stop {
  const memory = window as Memory
  const element = document.activeElement
  if (!element || element === document.body) {
    memory.stoodAt = undefined
    return { here: false, at: 'the end of the page', wrong: [] }
  }
  const wrong: string[] = []
  const at = `${element.tagName.toLowerCase()} “${(element.getAttribute('name') ?? element.id) || (element.textContent ?? '').trim().slice(0, 40)}”`
  const box = element.getBoundingClientRect()

  // A mark on a map is ringed by what is drawn in it.
  const ringed = [element, ...element.querySelectorAll('circle')].some((one) => {
    const { outlineStyle, outlineWidth, outlineColor, strokeWidth } = getComputedStyle(one)
    const outlined = outlineStyle !== 'none' && Number.parseFloat(outlineWidth) >= 2
    return (
      (outlined && !/, 0\)$/.test(outlineColor)) ||
      (one.tagName === 'circle' && Number.parseFloat(strokeWidth) >= 5)
    )
  })
  if (!element.matches(':focus-visible') || !ringed) wrong.push('nothing shows that the focus is here')

  const inset = (low: number, high: number) => [
    low + Math.min(2, (high - low) / 2),
    (low + high) / 2,
    high - Math.min(2, (high - low) / 2),
  ]
  const points = inset(box.left, box.right).flatMap((x) =>
    inset(box.top, box.bottom).map((y) => [x, y] as const),
  )
  const bare = points.filter(([x, y]) => {
    const top = document.elementFromPoint(x, y)
    return top !== null && (element.contains(top) || top.contains(element))
  })
  if (bare.length === 0) wrong.push('it is off the screen or hidden behind something')

  const here = { element, top: box.top + window.scrollY, left: box.left + window.scrollX }
  const { stoodAt: before } = memory
  if (before?.element.isConnected && before.element !== element) {
    const [first, second] = back ? [here, before] : [before, here]
    if (!(first.element.compareDocumentPosition(second.element) & Node.DOCUMENT_POSITION_FOLLOWING))
      wrong.push('the order of stops is not that of the page')
    else if (second.top < first.top - 24 && second.left <= first.left)
      wrong.push('the order of stops is not that of reading')
  }
  if ((element as HTMLElement).tabIndex > 0) wrong.push('it asks for a place of its own in the order')
  memory.stoodAt = here
  return { here: element.matches(selector), at, wrong }
}
