import { beforeAll, describe, expect, test } from 'vitest'
import { content } from '#lib/content/index.ts'
import { unitLine, unitOptions, unitPairs } from '../../app/_ui/unit-tree.ts'

// Reading all content takes a while on a busy machine.
beforeAll(() => void content(), 60_000)

describe('unitLine(id)', () => {
  test('leads from a unit to the broadest thing it is', () => {
    expect(unitLine('chalk')).toEqual(['chalk', 'limestone', 'sedimentary-rock', 'stone'])
  })

  test('is the unit alone where nothing is broader', () => {
    expect(unitLine('stone')).toEqual(['stone'])
  })
})

test('unitPairs() pairs every unit with itself and all that covers it', () => {
  const pairs = unitPairs()
  expect(pairs).toContainEqual(['chalk', 'chalk'])
  expect(pairs).toContainEqual(['chalk', 'stone'])
  expect(pairs).not.toContainEqual(['stone', 'chalk'])
})

test('unitOptions(counts) sets narrower units in under their broader ones', () => {
  const options = unitOptions([
    { id: 'chalk', count: 1 },
    { id: 'stone', count: 5 },
    { id: 'limestone', count: 3 },
    { id: 'sedimentary-rock', count: 4 },
  ])
  expect(options).toEqual([
    { id: 'stone', label: 'Stone', count: 5 },
    { id: 'sedimentary-rock', label: '– Sedimentary stone', count: 4 },
    { id: 'limestone', label: '– – Limestone', count: 3 },
    { id: 'chalk', label: '– – – Chalk', count: 1 },
  ])
})
