import { faultsOf } from '#lib/api/faults.ts'
import { SHAPES, type WrittenKind } from '#lib/entry/body.ts'
import { inOrder } from '#lib/entry/item-order.ts'
import { bodyTree, type ListNode, type Node, type ObjectNode } from '#lib/entry/tree.ts'
import type { FieldFault } from '#lib/errors.ts'
import { readAmount, type Typed } from '../_http/form.ts'
import { idFor } from './ids.ts'
import { lookOf } from './look.ts'
import { figureFault, once, plainer } from './plain-faults.ts'
import { readDate } from './read-date.ts'

/** The id of what a text names in the field at a path: a material by its label, say. Undefined for nobody's name. */
export type FindId = (path: string, text: string) => string | undefined

/** A form read into a body: the body as far as it goes, and what is wrong under the names that the form uses. */
export interface ReadForm {
  readonly body: unknown
  readonly faults: readonly FieldFault[]
  /** The form's name for a path of the body: items of a list that were left blank are no part of the body. */
  readonly nameOf: (bodyPath: string) => string
}

/**
 * Reads what was typed into the body of a kind, and holds it to the schema that the server checks. Whatever is
 * blank is left out; whatever cannot be read is a fault of its field and is left out too.
 */
export function readForm(kind: WrittenKind, typed: Typed, find: FindId): ReadForm {
  const tree = bodyTree(kind)
  const reading: Reading = { tree, typed, find, faults: [], names: new Map() }
  const { value: body = {} } = readObject(tree, '', '', reading)
  const nameOf = (bodyPath: string) => nameIn(reading.names, bodyPath)
  const parsed = SHAPES[kind].schema.safeParse(body)
  const unread = new Set(reading.faults.map(({ field }) => field))
  const broken = parsed.success
    ? []
    : faultsOf(parsed.error.issues, body)
        .map((fault) => ({ ...fault, field: nameOf(fault.field) }))
        // An item's id is made from its other fields once there are any; nobody is asked for it.
        .filter(({ field, code }) => !unread.has(field) && !(code === 'required' && /\.\d+\.id$/.test(field)))
  const plain = broken.map((fault) => plainer(fault, typed[fault.field]?.trim() ?? ''))
  return { body, faults: once([...reading.faults, ...plain]), nameOf }
}

/** The name of the nearest field that the form has. */
function nameIn(names: ReadonlyMap<string, string>, path: string): string {
  const known = names.get(path)
  if (known !== undefined) return known
  const at = path.lastIndexOf('.')
  return at < 0 ? path : nameIn(names, path.slice(0, at))
}

interface Reading {
  readonly tree: ObjectNode
  readonly typed: Typed
  readonly find: FindId
  readonly faults: FieldFault[]
  readonly names: Map<string, string>
}

/** A value, and whether anything was typed towards it. */
interface Read {
  readonly value: unknown
  readonly some: boolean
}

const NOTHING: Read = { value: undefined, some: false }

const join = (path: string, key: string | number) => (path === '' ? String(key) : `${path}.${key}`)

/** @param name what the form calls the field; @param path where its value will stand in the body */
function read(node: Node, name: string, path: string, reading: Reading): Read {
  reading.names.set(path, name)
  if (node.type === 'range') return readRange(name, reading)
  if (node.type === 'object') return readObject(node, name, path, reading)
  if (node.type === 'list') return readList(node, name, path, reading)
  const text = (reading.typed[name] ?? '').replace(/\r\n?/g, '\n').trim()
  if (node.type === 'flag' || node.type === 'constant') {
    if (!['', 'yes', 'no'].includes(text)) reading.faults.push({ field: name, code: 'unknown', value: text })
    if (node.type === 'constant') return text === 'yes' ? { value: node.value, some: true } : NOTHING
    return readFlag(node.optional, text)
  }
  if (text === '')
    return node.type === 'choice' && !node.optional && node.options.includes('not-recorded')
      ? { value: 'not-recorded', some: false }
      : NOTHING
  switch (node.type) {
    case 'choice':
      return { value: text, some: true }
    case 'number':
      return readNumber(name, reading)
    case 'text':
      if (node.form === 'plain') return { value: text, some: true }
      if (node.form === 'day' || node.form === 'date') return { value: readDate(text), some: true }
      return readName(name, text, reading)
  }
}

const readFlag = (optional: boolean, text: string): Read =>
  text === 'yes'
    ? { value: true, some: true }
    : optional
      ? { value: text === 'no' ? false : undefined, some: text === 'no' }
      : { value: false, some: false }

function readName(name: string, text: string, { find, faults }: Reading): Read {
  const value = find(name, text)
  if (value === undefined) faults.push({ field: name, code: 'unknown', value: text })
  return { value, some: true }
}

function readNumber(name: string, reading: Reading): Read {
  const { typed, faults } = reading
  const { amount, fault, text } = readAmount(typed, name)
  if (fault) faults.push(figureFault(fault, lookOf(reading.tree, name)))
  else if (amount && amount.low < amount.high) faults.push({ field: name, code: 'one-number', value: text })
  else return { value: amount?.low, some: true }
  return { value: undefined, some: true }
}

/** `1–1.5` in the field itself; what is usual within it in a field of its own. */
function readRange(name: string, reading: Reading): Read {
  const { typed, faults } = reading
  const { text, amount, fault } = readAmount(typed, name)
  if (fault) faults.push(figureFault(fault, lookOf(reading.tree, name)))
  const usual = `${name}.typical`
  const typical = (typed[usual] ?? '') === '' ? NOTHING : readNumber(usual, reading)
  if (text === '' && !typical.some) return NOTHING
  if (text === '') faults.push({ field: name, code: 'required' })
  if (!amount) return { value: undefined, some: true }
  const { low, high } = amount
  return { value: { low, ...(typical.value !== undefined && { typical: typical.value }), high }, some: true }
}

function readObject({ fields, optional }: ObjectNode, name: string, path: string, reading: Reading): Read {
  const read_ = Object.entries(fields).map(
    ([key, node]) => [key, read(node, join(name, key), join(path, key), reading)] as const,
  )
  const some = read_.some(([key, field]) => key !== 'id' && field.some)
  if (!some && optional) return NOTHING
  const value = Object.fromEntries(
    read_.flatMap(([key, field]) => (field.value === undefined ? [] : [[key, field.value]])),
  )
  return { value, some }
}

function readList({ of, min, optional }: ListNode, name: string, path: string, reading: Reading): Read {
  if (of.type === 'choice') {
    const chosen = (reading.typed[name] ?? '').split('\n').filter((one) => one !== '')
    return chosen.length === 0 && optional ? NOTHING : { value: chosen, some: chosen.length > 0 }
  }
  const values: unknown[] = []
  const taken = new Set<string>()
  for (const index of itemsOf(reading.typed, name)) {
    const item = join(name, index)
    const { value, some } = read(of, item, join(path, values.length), reading)
    if (some) values.push(withId(of, value, reading.typed, item, taken))
  }
  if (values.length > 0) return { value: values, some: true }
  if (optional) return NOTHING
  // A list that needs an item says what is missing in its first one.
  const first = min > 0 && of.type === 'object' ? [read(of, join(name, 0), join(path, 0), reading).value] : []
  return { value: first, some: false }
}

/** Items of lists that are pointed at carry an id; one that has none yet gets it from its first words. */
function withId(of: Node, value: unknown, typed: Typed, item: string, taken: Set<string>): unknown {
  if (of.type !== 'object' || of.fields.id === undefined) return value
  const id = typed[`${item}.id`] || idFor(typed, item, taken)
  taken.add(id)
  return { ...(value as object), id }
}

/** The numbers of a list's items that the form holds, in order; there may be gaps. */
export function itemsOf(typed: Typed, list: string): number[] {
  const start = `${list}.`
  const numbers = Object.keys(typed).flatMap((name) => {
    if (!name.startsWith(start)) return []
    const [, number] = /^(\d{1,3})(?:\.|-mark$|$)/.exec(name.slice(start.length)) ?? []
    return number === undefined ? [] : [Number(number)]
  })
  return inOrder([...new Set(numbers)], typed, list)
}
