import { describe, expect, it } from 'vitest'
import { readBody } from '#lib/entry/body.ts'
import { makeRecipe } from '#test/support/make.ts'

describe('readBody(kind, body, shape)', () => {
  it("gives a stored body of today's shape back as it was", () => {
    expect(readBody('recipe', makeRecipe(), 1)).toEqual(makeRecipe())
  })

  it('refuses a body from a newer program, and one that does not fit its shape', () => {
    expect(() => readBody('recipe', makeRecipe(), 2)).toThrow('newer than this program')
    expect(() => readBody('case', makeRecipe(), 1)).toThrow('"works"')
  })

  it.each([
    ['a zero-width space', 'a\u200bb'],
    ['a mark that turns the text around', 'a\u202eb'],
    ['a control character', 'a\u0007b'],
    ['a byte-order mark', 'a\ufeffb'],
    ['half of a character', `a${String.fromCharCode(0xd83d)}`],
  ])('refuses %s in a text', (_what, title) => {
    expect(() => readBody('recipe', makeRecipe({ title }), 1)).toThrow('invisible-character')
  })

  it('keeps every script, sign and line break', () => {
    const methodNotes = 'Kalk – õ 石灰 😀\n\tSlake first.'
    expect(readBody('recipe', makeRecipe({ methodNotes }), 1).methodNotes).toBe(methodNotes)
  })
})
