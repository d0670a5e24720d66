import { describe, expect, it } from 'vitest'
import { content } from '#lib/content/index.ts'
import { labelled, withChosen } from '../../app/_ui/filter-form.tsx'

// Reading it takes seconds on a busy machine, and no test should be charged with that.
content()

const counts = [{ id: 'pointing', count: 3 }]

describe('withChosen(counts, value, count)', () => {
  it('leaves counts alone that hold the choice, or when there is none', () => {
    expect(withChosen(counts, 'pointing', 9)).toEqual(counts)
    expect(withChosen(counts, undefined)).toEqual(counts)
  })

  it('adds a choice that was not counted, so that the form does not say it was never made', () => {
    expect(withChosen(counts, 'floor')).toEqual([...counts, { id: 'floor', count: 0 }])
    expect(withChosen([], '3', 37)).toEqual([{ id: '3', count: 37 }])
  })
})

describe('labelled(vocabulary, counts, value)', () => {
  it('names each by its term, and one that is no term by its id', () => {
    expect(labelled('uses', [...counts, { id: 'gone', count: 1 }], undefined)).toEqual([
      { id: 'pointing', count: 3, label: 'Pointing' },
      { id: 'gone', count: 1, label: 'gone' },
    ])
  })
})
