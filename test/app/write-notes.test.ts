import { describe, expect, it } from 'vitest'
import { content } from '#lib/content/index.ts'
import type { Ingredient } from '#lib/entry/recipe.ts'
import { compareWithRow, mixNote } from '../../app/_write/ratio-notes.ts'

const [row] = content().rows.values()
if (row === undefined) throw new Error('the tables hold no row')

const mix = (sand: number): Ingredient[] => [
  { material: 'lime-fat', role: 'lime', parts: { low: 1, high: 1 }, by: 'volume', state: 'putty' },
  { material: 'sand-pit', role: 'aggregate', parts: { low: sand, high: sand }, by: 'volume', state: 'dry' },
]
/** Any row, as if it stated three of sand. */
const followed = { ...row, ingredients: mix(3) }

describe('compareWithRow(ingredients, row, label)', () => {
  it('says nothing of parts within the row', () => {
    expect(compareWithRow(mix(3), followed, 'The row')).toBeUndefined()
  })

  it('names both ratios where the parts lie outside it', () => {
    const said = compareWithRow(mix(9), followed, 'The row')
    expect(said).toMatch(/come to 1 : \d.* with .*; The row lies between 1 : \d.* and 1 : \d/)
  })

  it('waits until every ingredient is whole', () => {
    const half = [...mix(9), { material: 'sand-pit' }]
    expect([compareWithRow(half, followed, 'The row'), mixNote(half), mixNote([])]).toEqual([
      undefined,
      undefined,
      undefined,
    ])
  })
})

describe('mixNote(ingredients)', () => {
  it('works a mix out that names no roles, whoever supplied it', () => {
    const asMixed = mix(3).map(({ role: _, ...item }) => ({ ...item, batch: '12' }))
    expect(mixNote(asMixed)).toMatch(/^As typed: .*1 : 3\b.* with putty/)
  })
})
