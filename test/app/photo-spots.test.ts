import { describe, expect, it } from 'vitest'
import { spotsOf } from '../../app/_ui/photo-spots.ts'
import { pairOf } from '../../app/cases/[slug]/photos/pair.ts'

const photo = (digit: string, spot?: string) => ({
  sha256: digit.repeat(64),
  alt: `Picture ${digit}.`,
  ...(spot !== undefined && { spot }),
})
const visits = [
  { on: '2019-05-01', photos: [photo('c', ' low  COURSES '), photo('d', 'Gable')] },
  { on: '2010-05-01', photos: [photo('a', 'Low courses'), photo('b', 'Low courses'), photo('e')] },
  { on: '2012-05-01' },
]

describe('spotsOf(visits)', () => {
  it('gathers pictures of one place from two days or more, oldest first, however its name was typed', () => {
    expect(spotsOf(visits)).toEqual([
      {
        name: 'Low courses',
        photos: [
          { ...photo('a', 'Low courses'), on: '2010-05-01' },
          { ...photo('b', 'Low courses'), on: '2010-05-01' },
          { ...photo('c', ' low  COURSES '), on: '2019-05-01' },
        ],
      },
    ])
  })

  it('leaves out what only one day shows', () => {
    expect(spotsOf(visits.slice(1))).toEqual([])
  })
})

describe('pairOf(spots, query)', () => {
  const spots = spotsOf(visits)
  const shas = (query: Record<string, string>) => {
    const pair = pairOf(spots, query)
    return [pair?.before.sha256[0], pair?.after.sha256[0]]
  }

  it('takes the first and the last picture where none is asked for, or one that is not there', () => {
    expect(shas({})).toEqual(['a', 'c'])
    expect(shas({ spot: '7', before: 'nonsense' })).toEqual(['a', 'c'])
  })

  it('takes the two that are asked for', () => {
    expect(shas({ spot: '0', before: 'b'.repeat(64), after: 'a'.repeat(64) })).toEqual(['b', 'a'])
  })

  it('is none where nothing was photographed twice', () => {
    expect(pairOf([], {})).toBeUndefined()
  })
})
