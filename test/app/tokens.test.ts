import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { PAPER } from '../../app/_ui/theme.ts'

const css = readFileSync(new URL('../../app/_ui/tokens.css', import.meta.url), 'utf8')

/** The colours of one block of tokens.css, which starts at `opening` and ends at its closing brace. */
function coloursAfter(opening: string): Map<string, string> {
  const start = css.indexOf(opening)
  expect(start, opening).toBeGreaterThanOrEqual(0)
  const block = css.slice(css.indexOf(':root', start), css.indexOf('}', css.indexOf(':root', start)))
  return new Map(
    [...block.matchAll(/--([a-z-]+): (#[0-9a-f]{6});/g)].map(([, name = '', value = '']) => [name, value]),
  )
}

const THEMES = {
  light: coloursAfter(':root'),
  dark: coloursAfter('@media (prefers-color-scheme: dark)'),
  print: coloursAfter('@media print'),
}

/** Relative luminance and contrast as WCAG 2.2 defines them. */
function luminance(hex: string): number {
  const [r = 0, g = 0, b = 0] = [1, 3, 5]
    .map((at) => Number.parseInt(hex.slice(at, at + 2), 16) / 255)
    .map((c) => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4))
  return 0.2126 * r + 0.7152 * g + 0.0722 * b
}

function contrast(a: string, b: string): number {
  const [high = 0, low = 0] = [luminance(a), luminance(b)].sort((x, y) => y - x)
  return (high + 0.05) / (low + 0.05)
}

/** Pairs as the parts use them: words need 4.5 to 1, edges of controls and drawn marks 3 to 1. */
const TEXT = [
  ['ink', 'paper'],
  ['ink', 'paper-band'],
  ['ink', 'accent-band'],
  ['ink', 'caution-band'],
  ['ink', 'hazard-band'],
  ['ink-soft', 'paper'],
  ['ink-soft', 'paper-band'],
  ['ink-soft', 'caution-band'],
  ['ink-soft', 'accent-band'],
  ['accent', 'paper'],
  ['accent', 'paper-band'],
  ['accent', 'caution-band'],
  ['accent', 'hazard-band'],
  ['accent', 'accent-band'],
  ['caution', 'paper'],
  ['caution', 'accent-band'],
  ['hazard', 'paper'],
  ['hazard', 'accent-band'],
  ['paper', 'ink'],
  ['paper', 'hazard'],
  ['paper', 'accent'],
] as const
const MARKS = [
  ['edge', 'paper'],
  ['edge', 'paper-band'],
  ['ochre', 'paper'],
  ['accent', 'paper'],
  ['caution', 'caution-band'],
  ['hazard', 'hazard-band'],
] as const

test('contrast(a, b) gives the published extremes: 21 for black on white, 1 for a colour on itself', () => {
  expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 10)
  expect(contrast('#777777', '#777777')).toBe(1)
  // WCAG's own example of a grey that just fails on white.
  expect(contrast('#777777', '#ffffff')).toBeCloseTo(4.48, 2)
})

describe.each(Object.entries(THEMES))('colours of the %s theme', (_, colours) => {
  const of = (name: string) => {
    const colour = colours.get(name)
    if (colour === undefined) throw new Error(`no colour named ${name}`)
    return colour
  }

  test('are the same set as in every other theme', () => {
    expect([...colours.keys()].sort()).toEqual([...THEMES.light.keys()].sort())
  })

  test.each(TEXT)('%s on %s reads at 4.5 to 1 or better', (ink, paper) => {
    expect(contrast(of(ink), of(paper))).toBeGreaterThanOrEqual(4.5)
  })

  test.each(MARKS)('%s on %s shows at 3 to 1 or better', (mark, paper) => {
    expect(contrast(of(mark), of(paper))).toBeGreaterThanOrEqual(3)
  })
})

test('what a browser draws around a page is of its paper', () => {
  expect(PAPER).toEqual({ light: THEMES.light.get('paper'), dark: THEMES.dark.get('paper') })
})
