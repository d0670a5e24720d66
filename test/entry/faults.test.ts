import { describe, expect, it } from 'vitest'
import { faultsOf } from '#lib/entry/faults.ts'
import { recipeBody } from '#lib/entry/recipe.ts'
import { makeRecipe } from '#test/support/make.ts'

const faultsIn = (body: unknown) => {
  const outcome = recipeBody.safeParse(body, { reportInput: true })
  return outcome.success ? [] : faultsOf(outcome.error)
}

describe('faultsOf(error)', () => {
  it('has nothing to say about a good body', () => {
    expect(faultsIn(makeRecipe())).toEqual([])
  })

  it('names a missing field and one of the wrong type', () => {
    const { title: _, ...body } = makeRecipe()
    expect(faultsIn({ ...body, summary: 3 })).toEqual([
      { field: 'title', code: 'missing' },
      { field: 'summary', code: 'wrong-type' },
    ])
  })

  it('names a field that nobody asked for, however deep', () => {
    const [first] = makeRecipe().ingredients
    expect(faultsIn(makeRecipe({ ingredients: [{ ...first, brand: 'x' } as never] }))).toEqual([
      { field: 'ingredients.0.brand', code: 'unknown-field' },
    ])
  })

  it('names a choice that is not offered and a length beyond its limit', () => {
    expect(faultsIn({ ...makeRecipe({ title: 'x'.repeat(121) }), family: 'magic' })).toEqual([
      { field: 'title', code: 'too-large', limit: 120 },
      { field: 'family', code: 'not-offered' },
    ])
  })

  it("keeps our refinements' own codes", () => {
    expect(faultsIn(makeRecipe({ standing: 'known-hazard' }))).toEqual([
      { field: 'standingReason', code: 'reason-needed' },
    ])
    expect(faultsIn(makeRecipe({ title: 'a\u202eb', follows: ['nowhere'] }))).toEqual([
      { field: 'title', code: 'invisible-character' },
      { field: 'follows.0', code: 'not-a-row' },
    ])
  })
})
