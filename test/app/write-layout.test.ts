import { describe, expect, it } from 'vitest'
import { SHAPES, type WrittenKind } from '#lib/entry/body.ts'
import { bodyTree, type Node } from '#lib/entry/tree.ts'
import { isField } from '#lib/workflow/draft-fields.ts'
import { labelFor } from '../../app/_write/labels.ts'
import { LAYOUTS, stepOf } from '../../app/_write/layout.ts'
import type { Part } from '../../app/_write/layouts/parts.ts'
import { lookOf } from '../../app/_write/look.ts'
import { optionsOf } from '../../app/_write/options.ts'
import { pickFrom } from '../../app/_write/pick.ts'
import { plainNumber } from '../../app/_write/print.ts'
import { readDate } from '../../app/_write/read-date.ts'

const KINDS = Object.keys(SHAPES) as WrittenKind[]

/** Set when a draft begins, given by the site, copied from a kept sheet, or asked beside a finding. */
const NOT_ASKED = [
  'invented',
  'case',
  'adaptedFrom',
  'overrides.0.field',
  'overrides.0.reason',
  ...['title', 'calculation', 'address', 'recipe', 'edition', 'sums', 'digest'].map(
    (one) => `sheets.0.${one}`,
  ),
  ...['label', 'value'].map((one) => `sheets.0.figures.0.${one}`),
]

/** Fields of a form, the first item of each list. */
function asked(parts: readonly Part[], within = ''): string[] {
  return parts.flatMap((part) =>
    typeof part === 'string' ? [`${within}${part}`] : asked(part.parts, `${within}${part.list}.0.`),
  )
}

function leaves(node: Node, path = ''): string[] {
  const join = (key: string) => (path === '' ? key : `${path}.${key}`)
  if (node.type === 'object')
    return Object.entries(node.fields).flatMap(([key, field]) =>
      key === 'id' ? [] : leaves(field, join(key)),
    )
  if (node.type !== 'list' || node.of.type !== 'object') return [path]
  return leaves(node.of, join('0'))
}

describe.each(KINDS)('the layout of a %s', (kind) => {
  const fields = LAYOUTS[kind].flatMap(({ parts }) => asked(parts))

  it('asks every field of the schema once, and knows the step of each', () => {
    const body = fields.filter((name) => !name.startsWith('entry.') && !name.endsWith('.typical'))
    const skipped = kind === 'visit' ? NOT_ASKED : [...NOT_ASKED, 'rights.photos']
    const whole = leaves(bodyTree(kind)).filter((name) => !skipped.includes(name))
    const plain = (name: string) => !name.endsWith('.typical')
    expect([...body].sort()).toEqual(whole.filter(plain).sort())
    expect(new Set(fields).size).toBe(fields.length)
    for (const { id, parts } of LAYOUTS[kind])
      for (const name of asked(parts)) expect([name, stepOf(kind, name)]).toEqual([name, id])
  })

  it('has words for every field and every choice, and a place in a draft to keep it', () => {
    for (const name of fields) {
      expect(labelFor(name)).not.toBe(name.replace(/\.0/g, '').replaceAll('.', '-'))
      const look = lookOf(bodyTree(kind), name)
      if ('options' in look)
        for (const { value, label } of optionsOf(look)) expect([value, label]).not.toEqual([value, ''])
      expect([name, isField(kind, name)]).toEqual([name, true])
    }
  })
})

describe('readDate(text)', () => {
  it.each([
    ['2019', '2019'],
    ['2019-06-12', '2019-06-12'],
    ['6/2019', '2019-06'],
    ['06.2019', '2019-06'],
    ['12.6.2019', '2019-06-12'],
    ['12. 6. 2019', '2019-06-12'],
    ['June 2019', '2019-06'],
    ['12 sept 2019', '2019-09-12'],
    // One of the two can't be the month, or both are the same.
    ['24/03/2025', '2025-03-24'],
    ['12/31/2024', '2024-12-31'],
    ['13/12/2024', '2024-12-13'],
    ['12/13/2024', '2024-12-13'],
    ['5/05/2025', '2025-05-05'],
    // Days that no month has, for the schema to refuse.
    ['31/02/2025', '2025-02-31'],
    ['13/13/2025', '2025-13-13'],
    // Either could be the day.
    ['6/12/2019', '6/12/2019'],
    ['03/04/2025', '03/04/2025'],
    ['11/12/2025', '11/12/2025'],
    ['last summer', 'last summer'],
  ])('%s is read as %s', (text, read) => {
    expect(readDate(text)).toBe(read)
  })
})

describe('pickFrom(choices)', () => {
  const pick = pickFrom([
    { id: 'limestone', label: 'Limestone', also: ['Kalkstein', 'freestone'] },
    { id: 'sandstone', label: 'Sandstone', also: ['grès', 'freestone'] },
    { id: 'lime', label: 'Kalk', also: ['Limestone'] },
  ])

  it('finds by label before other names, whatever the case and the accents', () => {
    expect(['limestone', 'LIMESTONE ', 'kalkstein', 'gres'].map(pick.find)).toEqual([
      'limestone',
      'limestone',
      'limestone',
      'sandstone',
    ])
  })

  it('tells what may have been meant: what shares the name, stands in it, or begins alike', () => {
    expect(['freestone', 'grey kalkstein of the shore', 'sandstien', 'tin'].map(pick.near)).toEqual([
      ['Limestone', 'Sandstone'],
      ['Limestone'],
      ['Sandstone'],
      [],
    ])
  })

  it('takes no name that two things share, and shows an id that it does not know as it is', () => {
    expect([pick.find('freestone'), pick.find('slate')]).toEqual([undefined, undefined])
    expect([pick.show('sandstone'), pick.show('slate')]).toEqual(['Sandstone', 'slate'])
  })
})

it('plainNumber(value) prints digits whatever the size', () => {
  expect([1500, 0.1, 1e-7, -2.5].map(plainNumber)).toEqual(['1500', '0.1', '0.0000001', '-2.5'])
})
