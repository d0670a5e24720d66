import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Change, diffBodies, diffWords } from '#lib/entry/diff.ts'
import { isSame, type Json, pathText } from '#lib/entry/json.ts'
import { bodies } from '../support/little-bodies.ts'
import { makeCase, makeRecipe, makeWork } from '../support/make.ts'

const told = (changes: readonly Change[]) => changes.map(({ kind, path }) => `${kind} ${pathText(path)}`)

describe('diffBodies(before, after)', () => {
  it('is empty for the same body in another order of fields', () => {
    const { title, ...rest } = makeCase()
    expect(diffBodies({ title, ...rest }, { ...rest, title })).toEqual([])
  })

  it('names each field that was added, removed or changed', () => {
    const before = makeRecipe({ period: '1800s' })
    const { period: _, ...after } = makeRecipe({ title: 'Another', historicTerm: 'fat' })
    expect(diffBodies(before, after)).toEqual([
      { kind: 'changed', path: ['title'], before: 'Lime and pit sand', after: 'Another' },
      { kind: 'added', path: ['historicTerm'], after: 'fat' },
      { kind: 'removed', path: ['period'], before: '1800s' },
    ])
  })

  it('follows a work by its id wherever it stands in the list', () => {
    const [a, b] = [makeWork(), makeWork({ id: 'floor', title: 'Floor', use: 'floor' })]
    const changes = diffBodies(
      makeCase({ works: [a, b] }),
      makeCase({ works: [b, { ...a, title: 'Pointing again' }] }),
    )
    expect(told(changes)).toEqual(['changed works[repointing].title', 'reordered works'])
  })

  it('takes a figure with its range as one', () => {
    const [lime, sand] = makeRecipe().ingredients
    if (!lime || !sand) throw new Error('no ingredients')
    const after = makeRecipe({ ingredients: [lime, { ...sand, parts: { low: 2, high: 3 } }] })
    expect(told(diffBodies(makeRecipe(), after))).toEqual(['changed ingredients[sand-pit].parts'])
  })

  it('takes a list whose keys repeat as one', () => {
    const [lime] = makeRecipe().ingredients
    if (!lime) throw new Error('no ingredients')
    const after = makeRecipe({ ingredients: [lime, { ...lime, note: 'twice' }] })
    expect(told(diffBodies(makeRecipe(), after))).toEqual(['changed ingredients'])
  })

  it('tells a first version field by field', () => {
    const changes = diffBodies(undefined, makeCase())
    expect(changes.every(({ kind }) => kind === 'added')).toBe(true)
    expect(told(changes)).toContain('added works[repointing].started')
  })

  it('is empty exactly when both are the same, and the other way about it is the mirror', () => {
    fc.assert(
      fc.property(bodies, bodies, (before, after) => {
        expect(diffBodies(before, after).length === 0).toBe(isSame(before as Json, after as Json))
        const mirror = { added: 'removed', removed: 'added', changed: 'changed', reordered: 'reordered' }
        const there = diffBodies(before, after).map(({ kind, path }) => `${mirror[kind]} ${pathText(path)}`)
        expect(there.sort()).toEqual(told(diffBodies(after, before)).sort())
      }),
    )
  })
})

describe('diffWords(before, after)', () => {
  it('marks the words that differ', () => {
    expect(diffWords('laid down for two weeks', 'laid down for three weeks')).toEqual([
      { kind: 'same', text: 'laid down for ' },
      { kind: 'removed', text: 'two' },
      { kind: 'added', text: 'three' },
      { kind: 'same', text: ' weeks' },
    ])
  })

  it('gives both texts back, whatever they are', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme' }), fc.string({ unit: 'grapheme' }), (before, after) => {
        const pieces = diffWords(before, after)
        const without = (kind: string) =>
          pieces
            .filter((piece) => piece.kind !== kind)
            .map(({ text }) => text)
            .join('')
        expect([without('added'), without('removed')]).toEqual([before, after])
      }),
    )
  })
})
