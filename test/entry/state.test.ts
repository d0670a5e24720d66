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
      disputed: false,
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
      disputed: false,
    })
    expect(replay([1], [...withdrawn, { revision: 1, outcome: 'restore', at: later }])).toEqual({
      states: new Map([[1, 'published']]),
      published: 1,
      withdrawnAt: null,
      disputed: false,
    })
  })

  it.each([
    ['publish', 'return'],
    ['publish', 'publish'],
    ['return', 'publish'],
    ['decline', 'withdraw'],
    ['return', 'restore'],
    ['approve', 'dispute'],
    ['publish', 'approve'],
    ['publish', 'settle'],
    ['publish', 'uphold'],
    ['decline', 'answer'],
  ] as const)('refuses %s and then %s of one revision', (first, second) => {
    const decisions = [first, second].map((outcome) => ({ revision: 1, outcome, at }))
    expect(() => replay([1], decisions)).toThrow(RangeError)
  })

  const published = { revision: 1, outcome: 'publish' as const, at }
  const disputed = { revision: 1, outcome: 'dispute' as const, at }

  it('holds an entry disputed until somebody answers, and takes it down when the dispute is upheld', () => {
    expect(replay([1], [published, disputed, disputed]).disputed).toBe(true)
    expect(replay([1], [published, disputed, { ...disputed, outcome: 'settle' }])).toMatchObject({
      published: 1,
      disputed: false,
    })
    expect(replay([1], [published, disputed, { ...disputed, outcome: 'uphold', at: later }])).toEqual({
      states: new Map([[1, 'withdrawn']]),
      published: null,
      withdrawnAt: later,
      disputed: false,
    })
  })

  it('stays disputed when a corrected revision is published, until a reviewer says so', () => {
    const corrected = { revision: 2, outcome: 'publish' as const, at }
    expect(replay([1, 2], [published, disputed, corrected])).toMatchObject({ published: 2, disputed: true })
  })

  it.each(['approve', 'answer', 'strike', 'erase'] as const)('moves nothing at all for %s', (outcome) => {
    const before = outcome === 'approve' ? [] : [published]
    expect(replay([1], [...before, { revision: 1, outcome, at }])).toEqual(replay([1], before))
  })

  it('refuses a decision about a revision that is not there', () => {
    expect(() => replay([1], [{ revision: 2, outcome: 'publish', at }])).toThrow('missing')
  })
})
