import { expect, test } from 'vitest'
import { askedOf } from '../../app/_write/asked-of.ts'

const DRAFT = { kind: 'recipe', slug: null, basedOn: null, adaptedFrom: null, typed: {} } as const

test.each([
  ['begun from nothing', {}, { kind: 'recipe' }],
  ['of a further version', { slug: 'hot-lime', basedOn: 2 }, { from: 'hot-lime@2', kind: 'recipe' }],
  ['that adapts a recipe', { adaptedFrom: 'hot-lime@2' }, { adapt: 'hot-lime@2', kind: 'recipe' }],
  ['of a visit', { kind: 'visit' as const, typed: { case: 'barn' } }, { of: 'barn', kind: 'visit' }],
  ['of a visit to nothing yet', { kind: 'visit' as const }, { kind: 'visit' }],
])('askedOf() a draft %s tells what it began from, and its kind', (_, more, asked) => {
  expect(askedOf({ ...DRAFT, ...more })).toEqual(asked)
})
