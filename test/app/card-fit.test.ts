import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { CARD_FITS, cardFit } from '../../app/recipes/[slug]/job/card/card-fit.ts'

const CARD = {
  title: 'Hot lime for rubble',
  standing: '',
  cautions: ['x'.repeat(150), 'x'.repeat(160)],
  loads: 'One load. Of these: 12 full loads',
  rows: ['Fat lime (lump)', 'Pit sand (damp)', 'Water, first', 'Water, in all'],
  below: 'x'.repeat(150),
  steps: Array(8).fill('Turn the ingredients together until the colour is even.'),
  foot: 'x'.repeat(180),
}

describe('cardFit', () => {
  test('sets what is short large and what is long small', () => {
    const longer = { ...CARD, steps: Array(20).fill(CARD.steps[0]) }
    const fits = [{ ...CARD, steps: [] }, CARD, longer, { ...longer, standing: 'x'.repeat(600) }].map(cardFit)
    expect(fits).toEqual([...fits].sort((a, b) => b - a))
    expect(new Set(fits).size).toBe(4)
    expect(cardFit({ ...longer, standing: 'x'.repeat(9000) })).toBe(60)
  })

  test('names sizes that the styles know', () => {
    const css = readFileSync('app/recipes/[slug]/job/card/card.css', 'utf8')
    for (const fit of CARD_FITS)
      expect(css).toMatch(new RegExp(`\\.card-fit-${fit} \\{\\s+--fit: ${fit / 100};`))
  })
})
