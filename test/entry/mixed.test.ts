import { describe, expect, it } from 'vitest'
import type { Work } from '#lib/entry/case.ts'
import { compareMix } from '#lib/entry/mixed.ts'
import { makeRecipe } from '../support/make.ts'

const recipe = makeRecipe()
/** Lime putty and dry pit sand, so many parts of sand to `lime`. */
const mix = (sand: number, lime = 1, state: 'putty' | 'dry-hydrate' = 'putty'): Work['mixed'] => ({
  ingredients: [
    { material: 'lime-fat', parts: { low: lime, high: lime }, by: 'volume', state },
    { material: 'sand-pit', parts: { low: sand, high: sand }, by: 'volume', state: 'dry' },
  ],
})

describe('compareMix(recipe, mixed)', () => {
  it('takes parts to the first ingredient, whatever the box they were counted in', () => {
    expect(compareMix(recipe, mix(2.75))).toBe('as-stated')
    expect(compareMix(recipe, mix(5.5, 2))).toBe('as-stated')
  })

  it('allows a tenth beyond the recipe and no more', () => {
    expect(compareMix(recipe, mix(3.3))).toBe('as-stated')
    expect(compareMix(recipe, mix(3.4))).toBe('differs')
    expect(compareMix(recipe, mix(2.2))).toBe('differs')
  })

  it('differs in another state, another material or one more', () => {
    expect(compareMix(recipe, mix(2.75, 1, 'dry-hydrate'))).toBe('differs')
    const one = mix(2.75)?.ingredients ?? []
    expect(compareMix(recipe, { ingredients: one.slice(0, 1) })).toBe('differs')
    const dust = { material: 'brick-dust', parts: { low: 1, high: 1 }, by: 'volume', state: 'dry' } as const
    expect(compareMix(recipe, { ingredients: [...one, dust] })).toBe('differs')
  })

  it('says what was not told', () => {
    expect(compareMix(recipe, undefined)).toBe('not-told')
    expect(compareMix(recipe, { ingredients: [] })).toBe('not-told')
    expect(compareMix(undefined, mix(3))).toBe('no-recipe')
  })
})
