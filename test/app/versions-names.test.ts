import { describe, expect, it } from 'vitest'
import { SHAPES, type WrittenKind } from '#lib/entry/body.ts'
import { itemKey, type Path } from '#lib/entry/json.ts'
import { bodyTree, type Node } from '#lib/entry/tree.ts'
import { numberedName } from '../../app/_versions/field-name.ts'
import { makeCase, makeWork } from '../support/make.ts'

/** Every place of a body that two writers can change each in another way. */
function places(node: Node, path: Path = []): Path[] {
  const whole = path.length > 0 && (node.type !== 'object' || node.optional) ? [path] : []
  if (node.type === 'object')
    return [...whole, ...Object.entries(node.fields).flatMap(([key, field]) => places(field, [...path, key]))]
  if (node.type !== 'list' || node.of.type !== 'object') return whole
  return itemKey(path.at(-1), []) === undefined ? whole : [...whole, ...places(node.of, [...path, '[x]'])]
}

/** Never asked of anybody, or asked anew of every version. */
const UNASKED = ['id', 'adaptedFrom', 'rights']

describe('numberedName(path, bodies)', () => {
  it.each(Object.keys(SHAPES) as WrittenKind[])('has words for every place in a %s', (kind) => {
    const named = places(bodyTree(kind)).filter((path) => !UNASKED.some((key) => path.includes(key)))
    const raw = named.filter((path) => {
      const [name, last] = [numberedName(path, []), path.at(-1) ?? '']
      return [last, 'x'].some((key) => name === key || name.endsWith(`, ${key}`)) || /[[\].]\w/.test(name)
    })
    expect(raw).toEqual([])
  })

  it('counts the items that a field stands in, and calls them by their names', () => {
    const works = [makeWork(), makeWork({ id: 'south', title: 'South face' })]
    const path = ['works', '[south]', 'recipe']
    expect(numberedName(path, [makeCase(), makeCase({ works })])).toBe('Work 2: South face, Recipe')
    expect(numberedName(['works', '[gone]', 'areaM2'], [makeCase({ works })])).toBe('Work, Area')
    expect(numberedName(['works', '[repointing]'], [makeCase()])).toBe('Work 1: Repointing')
  })
})
