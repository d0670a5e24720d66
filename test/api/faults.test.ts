import { describe, expect, it } from 'vitest'
import { z } from 'zod'
import { faultsOf } from '#lib/api/faults.ts'
import { amount } from '#lib/api/shapes.ts'
import { parts, slug } from '#lib/entry/fields.ts'

const schema = z.strictObject({
  name: slug,
  area: z.number().positive().max(1e5),
  count: z.int().min(1),
  kind: z.enum(['brick', 'rubble']),
  parts,
  work: z.discriminatedUnion('kind', [z.object({ kind: z.literal('floor') })]),
  list: z.array(z.string().max(3)).min(1),
  depth: amount({ above: 0, max: 100 }),
  density: amount({ above: 1500 }).optional(),
})

const sound = {
  name: 'lias-pointing',
  area: 24,
  count: 2,
  kind: 'brick',
  parts: { low: 1, high: 2 },
  work: { kind: 'floor' },
  list: ['a'],
  depth: 20,
}

function faults(change: Record<string, unknown>) {
  const given = { ...sound, ...change }
  const parsed = schema.safeParse(given)
  return parsed.success ? [] : faultsOf(parsed.error.issues, given)
}

describe('faultsOf(issues, given)', () => {
  it('finds nothing in what is sound', () => {
    expect(faults({})).toEqual([])
  })

  it.each([
    [{ area: undefined }, { field: 'area', code: 'required' }],
    [{ area: 'wide' }, { field: 'area', code: 'not-a-number', value: 'wide' }],
    [{ area: 0 }, { field: 'area', code: 'not-positive', value: 0, limit: 0 }],
    [{ area: 2e5 }, { field: 'area', code: 'too-large', value: 2e5, limit: 1e5 }],
    [{ count: 0 }, { field: 'count', code: 'too-small', value: 0, limit: 1 }],
    [{ count: 1.5 }, { field: 'count', code: 'not-whole', value: 1.5 }],
    [{ kind: 'cob' }, { field: 'kind', code: 'unknown', value: 'cob', limit: 'brick, rubble' }],
    [{ name: 'No Slug' }, { field: 'name', code: 'not-a-slug', value: 'No Slug' }],
    [{ parts: { low: 2, high: 1 } }, { field: 'parts', code: 'out-of-order' }],
    [{ parts: 3 }, { field: 'parts', code: 'wrong-type', value: 3 }],
    [{ work: { kind: 'cob' } }, { field: 'work.kind', code: 'unknown', value: 'cob' }],
    [{ list: [] }, { field: 'list', code: 'too-few', limit: 1 }],
    [{ list: ['abcd'] }, { field: 'list.0', code: 'too-long', value: 'abcd', limit: 3 }],
    [{ depth: 101 }, { field: 'depth', code: 'too-large', value: 101, limit: 100 }],
    [{ depth: 0 }, { field: 'depth', code: 'not-positive', value: 0, limit: 0 }],
    [{ density: 1500 }, { field: 'density', code: 'too-small', value: 1500, limit: 1500, exclusive: true }],
    [{ depth: 'deep' }, { field: 'depth', code: 'not-a-number', value: 'deep' }],
    [{ depth: undefined }, { field: 'depth', code: 'required' }],
    [{ depth: { low: 3, typical: 2, high: 4 } }, { field: 'depth', code: 'out-of-order' }],
    [
      { depth: { low: 3, typical: 4, high: 400 } },
      { field: 'depth.high', code: 'too-large', value: 400, limit: 100 },
    ],
    [{ stray: 1 }, { field: 'stray', code: 'unknown-field' }],
  ])('names field, code, value and limit for %j', (change, fault) => {
    expect(faults(change)).toEqual([fault])
  })

  it('reports every fault at once', () => {
    expect(faults({ area: -1, kind: 'cob', stray: 1 }).map(({ field }) => field)).toEqual([
      'area',
      'kind',
      'stray',
    ])
  })
})
