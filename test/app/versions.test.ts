import { createElement } from 'react'
import { renderToStaticMarkup } from 'react-dom/server'
import { describe, expect, it } from 'vitest'
import { speaking } from '#app/asked.ts'
import { SHAPES, type WrittenKind } from '#lib/entry/body.ts'
import { itemKey, type Json, type Path } from '#lib/entry/json.ts'
import { bodyTree, type Node } from '#lib/entry/tree.ts'
import { numberedName } from '../../app/_versions/field-name.ts'
import { FieldValue } from '../../app/_versions/field-value.tsx'
import { langOfPick } from '../../app/_versions/pick-lang.ts'
import type { Named } from '../../app/_versions/shown.ts'
import { makeCase, makeWork } from '../support/make.ts'

/** Every place of a body that two writers can change each in another way. */
function places(node: Node, path: Path = []): Path[] {
  // An object is one thing where it may be missing, or be there with nothing in it.
  const canBeEmpty = (object: Node) =>
    object.type === 'object' && Object.values(object.fields).every(({ optional }) => optional)
  const whole = path.length > 0 && (node.type !== 'object' || node.optional || canBeEmpty(node)) ? [path] : []
  if (node.type === 'object')
    return [...whole, ...Object.entries(node.fields).flatMap(([key, field]) => places(field, [...path, key]))]
  if (node.type !== 'list' || node.of.type !== 'object') return whole
  return itemKey(path.at(-1), []) === undefined ? whole : [...whole, ...places(node.of, [...path, '[x]'])]
}

/** A value that may stand where the schema has this node; `empty` with as little in it as it can have. */
function sampleFor(node: Node, empty: boolean): Json {
  switch (node.type) {
    case 'object': {
      const fields = Object.entries(node.fields).filter(([, { optional }]) => !(empty && optional))
      return Object.fromEntries(fields.map(([key, field]) => [key, sampleFor(field, empty)]))
    }
    case 'list':
      return empty ? [] : [sampleFor(node.of, empty)]
    case 'range':
      return { low: 1, typical: 2, high: 3 }
    case 'number':
      return 2
    case 'flag':
      return true
    case 'choice':
      return node.options[0] ?? ''
    case 'constant':
      return node.value
    case 'text':
      return node.form === 'day' || node.form === 'date' ? '2024-05-06' : 'lime-putty'
  }
}

const nodeOf = (tree: Node, path: Path): Node =>
  path.reduce<Node>((node, part) => {
    const next = node.type === 'object' ? node.fields[part] : node.type === 'list' ? node.of : undefined
    if (next === undefined) throw new Error(`Nothing stands at ${path.join('.')}`)
    return next
  }, tree)

describe('FieldValue', () => {
  it.each(Object.keys(SHAPES) as WrittenKind[])(
    'shows whatever can change in a %s, filled or empty',
    (kind) => {
      const shown = { nameOf: () => undefined, pictures: new Map() }
      for (const path of places(bodyTree(kind)))
        for (const empty of [true, false]) {
          const value = sampleFor(nodeOf(bodyTree(kind), path), empty)
          const drawn = renderToStaticMarkup(FieldValue({ kind, path, value, shown }))
          expect(drawn, `${path.join('.')} ${JSON.stringify(value)}`).not.toBe('')
        }
    },
  )
})

describe('On a Spanish page', () => {
  const drawn = (named: Named | undefined) =>
    speaking('es', () =>
      renderToStaticMarkup(
        createElement(FieldValue, {
          ...{ kind: 'material' as const, path: ['like'], value: 'x' },
          shown: { nameOf: () => named, pictures: new Map() },
        }),
      ),
    )

  it('a name in our own words is not marked', () => {
    expect(drawn({ words: 'Caliza' })).toBe('Caliza')
  })

  it('words of others are, and what we say around them is not', () => {
    expect(drawn({ words: 'Kankar lime', lang: 'en' })).toBe('<span lang="en">Kankar lime</span>')
    const say = (title: string) => `${title}, revisión 2`
    expect(drawn({ words: 'Mortero', lang: '', say })).toBe('<span lang="">Mortero</span>, revisión 2')
    expect(drawn(undefined)).toBe('<span lang="">x</span>')
  })

  it.each([
    ['units', 'limestone', {}],
    ['materials', 'lime-fat', {}],
    ['materials', 'lime-kankar', { lang: 'en' }],
    ['materials', 'somebodys-lime', { lang: '' }],
    ['sources', 'cointeraux-1791', { lang: 'fr' }],
    ['rows', 'renders-on-earth-1920#dagga', { lang: 'en' }],
  ] as const)('what the list of %s calls %s is in the language of %o', (pick, id, lang) => {
    expect(speaking('es', () => langOfPick(pick, id))).toEqual(lang)
  })
})

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
