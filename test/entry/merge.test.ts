import canonicalize from 'canonicalize'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Change, diffBodies } from '#lib/entry/diff.ts'
import { isObject, isRange, type Json, type Path, pathText } from '#lib/entry/json.ts'
import { mergeBodies, mergeWith, type Side } from '#lib/entry/merge.ts'
import { bodies } from '../support/little-bodies.ts'
import { makeCase, makeWork } from '../support/make.ts'

/** What one change says of each field: what it came to hold, or that it went. An empty object has no field. */
function fieldsOf(change: Exclude<Change, { kind: 'reordered' }>): string[] {
  const fields = (value: Json | undefined, path: Path): [string, Json][] =>
    value === undefined
      ? []
      : isObject(value) && !isRange(value)
        ? Object.entries(value).flatMap(([key, held]) => fields(held, [...path, key]))
        : [[pathText(path), value]]
  const [before, after] = ['before', 'after'].map((side) =>
    fields((change as Partial<Record<string, Json>>)[side], change.path),
  ) as [[string, Json][], [string, Json][]]
  const now = new Map(after)
  const gone = before.flatMap(([path]) => (now.has(path) ? [] : [[path, null] as [string, Json]]))
  return [...after, ...gone].map((field) => canonicalize(field) ?? '')
}

const paths = ({ conflicts }: ReturnType<typeof mergeBodies>) => conflicts.map(({ path }) => pathText(path))

describe('mergeBodies(base, theirs, yours)', () => {
  it('keeps what each of two changed in other fields', () => {
    const base = makeCase()
    const theirs = makeCase({ title: 'Their title' })
    const yours = makeCase({ summary: 'Your summary.', works: [makeWork({ areaM2: 12 })] })
    expect(mergeBodies(base, theirs, yours)).toEqual({
      merged: { ...base, title: 'Their title', summary: 'Your summary.', works: [makeWork({ areaM2: 12 })] },
      conflicts: [],
    })
  })

  it('keeps works that each of two added, and one that was taken out stays out', () => {
    const work = (id: string) => makeWork({ id })
    const { merged, conflicts } = mergeBodies(
      makeCase({ works: [work('a'), work('b')] }),
      makeCase({ works: [work('theirs'), work('b')] }),
      makeCase({ works: [work('a'), work('b'), work('yours')] }),
    )
    expect((merged as { works: { id: string }[] }).works.map(({ id }) => id)).toEqual([
      'theirs',
      'b',
      'yours',
    ])
    expect(conflicts).toEqual([])
  })

  it('decides nothing where both changed one field, and keeps what is recorded until the writer chooses', () => {
    const [base, theirs, yours] = [makeCase(), makeCase({ title: 'Theirs' }), makeCase({ title: 'Yours' })]
    const result = mergeBodies(base, theirs, yours)
    expect(result.conflicts).toEqual([
      { path: ['title'], base: base.title, theirs: 'Theirs', yours: 'Yours' },
    ])
    expect(result.merged).toEqual(theirs)
    expect(mergeWith(base, theirs, yours, { title: 'yours' })).toEqual(yours)
  })

  it('asks about a work that one took out and the other changed', () => {
    const [kept, gone] = [makeWork({ id: 'a' }), makeWork({ id: 'b' })]
    const result = mergeBodies(
      makeCase({ works: [kept, gone] }),
      makeCase({ works: [kept] }),
      makeCase({ works: [kept, { ...gone, areaM2: 3 }] }),
    )
    expect(paths(result)).toEqual(['works[b]'])
  })

  it('never puts one latitude with another longitude', () => {
    const place = (latitude: number, longitude: number) =>
      makeCase({ place: { country: 'EE', region: 'Invented county', latitude, longitude } })
    expect(paths(mergeBodies(place(58, 25), place(58.1, 25), place(58, 25.1)))).toEqual([
      'place.latitude',
      'place.longitude',
    ])
  })

  it('is the other version where one changed nothing, and either where both did the same', () => {
    fc.assert(
      fc.property(bodies, bodies, (base, changed) => {
        const clean = { merged: changed, conflicts: [] }
        expect(mergeBodies(base, base, changed)).toEqual(clean)
        expect(mergeBodies(base, changed, base)).toEqual(clean)
        expect(mergeBodies(base, changed, changed)).toEqual(clean)
      }),
    )
  })

  it('meets the same conflicts from either side', () => {
    fc.assert(
      fc.property(bodies, bodies, bodies, (base, a, b) => {
        expect(paths(mergeBodies(base, a, b)).sort()).toEqual(paths(mergeBodies(base, b, a)).sort())
      }),
    )
  })

  it('holds, for every field, what one of the two versions says', () => {
    const sides = fc.constantFrom<Side>('theirs', 'yours')
    fc.assert(
      fc.property(bodies, bodies, bodies, sides, (base, theirs, yours, side) => {
        const { conflicts } = mergeBodies(base, theirs, yours)
        const choices = Object.fromEntries(conflicts.map(({ path }) => [pathText(path), side]))
        const merged = mergeWith(base, theirs, yours, choices)
        const changesOf = (to: unknown) =>
          diffBodies(base, to)
            .filter((change) => change.kind !== 'reordered')
            .flatMap(fieldsOf)
            // What is empty says nothing that what has something in it does not.
            .filter((change) => !change.endsWith(',[]]') && !change.endsWith(',{}]'))
        const [ours, either] = [changesOf(merged), new Set([...changesOf(theirs), ...changesOf(yours)])]
        // Nothing is made up …
        expect(ours.filter((change) => !either.has(change))).toEqual([])
        // … and all of the side that was chosen is there, as far as it goes against nothing.
        const mine = changesOf(side === 'theirs' ? theirs : yours)
        expect(mine.filter((change) => !ours.includes(change))).toEqual([])
      }),
    )
  })
})
