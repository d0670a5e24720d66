import { describe, expect, it } from 'vitest'
import { replay } from '#lib/entry/state.ts'

const at = new Date('2026-01-01T00:00:00Z')
const later = new Date('2026-02-01T00:00:00Z')

describe('replay(numbers, decisions)', () => {
  it('leaves undecided revisions submitted and nothing published', () => {
    expect(replay([1, 2], [])).toEqual({
      states: new Map([
        [1, 'submitted'],
        [2, 'submitted'],
      ]),
      published: null,
      withdrawnAt: null,
    })
  })

  it('supersedes the revision published before', () => {
    const { states, published } = replay(
      [1, 2],
      [
        { revision: 1, outcome: 'publish', at },
        { revision: 2, outcome: 'publish', at },
      ],
    )
    expect([states.get(1), states.get(2), published]).toEqual(['superseded', 'published', 2])
  })

  it('publishes nothing while withdrawn, and the same revision once restored', () => {
    const withdrawn = [
      { revision: 1, outcome: 'publish' as const, at },
      { revision: 1, outcome: 'withdraw' as const, at: later },
    ]
    expect(replay([1], withdrawn)).toEqual({
      states: new Map([[1, 'withdrawn']]),
      published: null,
      withdrawnAt: later,
    })
    expect(replay([1], [...withdrawn, { revision: 1, outcome: 'restore', at: later }])).toEqual({
      states: new Map([[1, 'published']]),
      published: 1,
      withdrawnAt: null,
    })
  })

  it.each([
    ['publish', 'return'],
    ['publish', 'publish'],
    ['return', 'publish'],
    ['decline', 'withdraw'],
    ['return', 'restore'],
  ] as const)('refuses %s and then %s of one revision', (first, second) => {
    const decisions = [first, second].map((outcome) => ({ revision: 1, outcome, at }))
    expect(() => replay([1], decisions)).toThrow(RangeError)
  })

  it('refuses a decision about a revision that is not there', () => {
    expect(() => replay([1], [{ revision: 2, outcome: 'publish', at }])).toThrow('missing')
  })
})
