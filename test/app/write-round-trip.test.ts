import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { SHAPES, type WrittenKind } from '#lib/entry/body.ts'
import { bodyTree, type Node } from '#lib/entry/tree.ts'
import { readDemo } from '#lib/workflow/demo-files.ts'
import { printForm } from '../../app/_write/print.ts'
import { readForm } from '../../app/_write/read.ts'

const KINDS = Object.keys(SHAPES) as WrittenKind[]
const same = (_: string, id: string) => id

/** Text that a field may hold and keep: no blanks at its ends, no line end but `\n`. */
const line = fc
  .string({ unit: 'grapheme', minLength: 1, maxLength: 30 })
  .map((text) => text.replace(/\r/g, '').trim())
  .filter((text) => text !== '')
const figure = fc.oneof(
  fc.integer({ min: 1, max: 100_000 }),
  fc.double({ min: 1e-6, max: 1e6, noNaN: true, noDefaultInfinity: true }).filter((value) => value > 0),
)
const day = fc.date({ min: new Date('1900-01-01'), max: new Date('2100-01-01'), noInvalidDate: true })
const name = fc.stringMatching(/^[a-z][a-z0-9]{0,8}(-[a-z0-9]{1,4})?$/)

/** Any body that a tree allows, valid or not in other ways. */
function bodies(node: Node): fc.Arbitrary<unknown> {
  switch (node.type) {
    case 'object':
      return fc.record(
        Object.fromEntries(Object.entries(node.fields).map(([key, field]) => [key, maybe(field)])),
      )
    case 'list':
      return fc.array(node.of.type === 'choice' ? bodies(node.of) : filled(node.of), {
        minLength: node.min,
        maxLength: 3,
      })
    case 'range':
      return fc
        .tuple(figure, figure, fc.option(fc.double({ min: 0, max: 1, noNaN: true }), { nil: undefined }))
        .map(([a, b, share]) => {
          const [low, high] = a < b ? [a, b] : [b, a]
          return { low, ...(share !== undefined && { typical: low + share * (high - low) }), high }
        })
    case 'choice':
      return fc.constantFrom(...node.options)
    case 'number':
      return figure
    case 'flag':
      return fc.boolean()
    case 'constant':
      return fc.constant(node.value)
    case 'text':
      return node.form === 'day' || node.form === 'date'
        ? day.map((date) => date.toISOString().slice(0, 10))
        : node.form === 'plain'
          ? line
          : name
  }
}

const maybe = (node: Node): fc.Arbitrary<unknown> =>
  node.optional ? fc.option(filled(node), { nil: undefined }) : bodies(node)

/** An item or an optional part is there because something stands in it. */
const filled = (node: Node): fc.Arbitrary<unknown> => bodies(node).filter((value) => weight(node, value) > 0)

function weight(node: Node, value: unknown): number {
  if (value === undefined) return 0
  if (node.type === 'object')
    return Object.entries(node.fields).reduce(
      (sum, [key, field]) => sum + (key === 'id' ? 0 : weight(field, Reflect.get(value as object, key))),
      0,
    )
  if (node.type === 'list') return (value as unknown[]).length
  return node.type === 'flag' && !node.optional && value === false ? 0 : 1
}

/** Without what is undefined, as JSON keeps it. */
const plain = (value: unknown): unknown => JSON.parse(JSON.stringify(value))

describe.each(KINDS)('the form of a %s', (kind) => {
  it('reads back every body that it printed', () => {
    fc.assert(
      fc.property(bodies(bodyTree(kind)), (body) => {
        const typed = printForm(kind, body as object, same)
        expect(plain(readForm(kind, typed, (_, text) => text).body)).toEqual(plain(body))
      }),
      { numRuns: 60 },
    )
  })

  it('loses nothing typed: each text is in the body, or is a fault of its field', () => {
    const texts = fc.oneof(
      line,
      figure.map(String),
      fc.constantFrom('1,500', '2–3', 'yes', '6/2019', '12.6.2019', 'not-recorded', '½', '3-2'),
    )
    const leaves = fc.dictionary(fc.constantFrom(...leafNames(bodyTree(kind))), texts, { maxKeys: 12 })
    fc.assert(
      fc.property(leaves, (typed) => {
        const { body, faults, nameOf } = readForm(kind, typed, (_, text) => text)
        const printed = printForm(kind, body as object, same)
        const kept = new Set(Object.keys(printed).map(nameOf))
        const faulty = new Set(faults.map(({ field }) => field))
        const told = (field: string) => kept.has(field) || faulty.has(field)
        const lost = Object.keys(typed).filter(
          (field) => !told(field) && !told(field.replace(/\.typical$/, '')),
        )
        expect(lost).toEqual([])
      }),
      { numRuns: 60 },
    )
  })
})

/** Names of all fields, with two items to each list. */
function leafNames(node: Node, path = ''): string[] {
  const join = (key: string) => (path === '' ? key : `${path}.${key}`)
  if (node.type === 'object')
    return Object.entries(node.fields).flatMap(([key, field]) =>
      key === 'id' ? [] : leafNames(field, join(key)),
    )
  if (node.type === 'list' && node.of.type !== 'choice')
    return ['0', '4'].flatMap((key) => leafNames(node.of, join(key)))
  return node.type === 'range' ? [path, `${path}.typical`] : [path]
}

it('readForm(case, nothing typed) asks for what a person can give, never for an id', () => {
  const fields = readForm('case', {}, (_, text) => text).faults.map(({ field }) => field)
  expect(fields).toContain('title')
  expect(fields.filter((field) => field.endsWith('.id'))).toEqual([])
})

describe('the demo', () => {
  it('passes through the forms unchanged, without a fault', () => {
    const entries = readDemo()
    expect(entries.length).toBeGreaterThan(100)
    for (const { kind, slug, revisions } of entries)
      for (const { body } of revisions) {
        const read = readForm(kind, printForm(kind, body as object, same), (_, text) => text)
        expect([slug, read.faults, read.body]).toEqual([slug, [], body])
      }
  })
})
