import type { z } from 'zod'
import { SHAPES, type WrittenKind } from './body.ts'
import { day, partialDate, revisionRef, rowRef, slug, termId } from './fields.ts'

/** What a text must be beside text. `name` is an id of ours, `revision` and `row` point at one. */
export type TextForm = 'plain' | 'name' | 'day' | 'date' | 'revision' | 'row'

interface Some {
  readonly optional: boolean
}
export interface TextNode extends Some {
  readonly type: 'text'
  readonly form: TextForm
  readonly max: number
}
export interface NumberNode extends Some {
  readonly type: 'number'
  readonly whole: boolean
}
export interface ChoiceNode extends Some {
  readonly type: 'choice'
  readonly options: readonly string[]
}
export interface FlagNode extends Some {
  readonly type: 'flag'
}
export interface ConstantNode extends Some {
  readonly type: 'constant'
  readonly value: string
}
/** `low` to `high`, perhaps with what is usual between them. */
export interface RangeNode extends Some {
  readonly type: 'range'
}
export interface ObjectNode extends Some {
  readonly type: 'object'
  readonly fields: Readonly<Record<string, Node>>
}
export interface ListNode extends Some {
  readonly type: 'list'
  readonly of: Node
  readonly min: number
  readonly max: number
}

/** A body's schema as a form sees it: what stands where, and of what sort. */
export type Node =
  | TextNode
  | NumberNode
  | RangeNode
  | ChoiceNode
  | FlagNode
  | ConstantNode
  | ObjectNode
  | ListNode

const FORMS = new Map<unknown, TextForm>([
  [slug, 'name'],
  [termId, 'name'],
  [day, 'day'],
  [partialDate, 'date'],
  [revisionRef, 'revision'],
  [rowRef, 'row'],
])

/** The tree of a schema. Only what bodies are made of: a schema of another sort is a fault of ours. */
export function treeOf(schema: z.core.$ZodType, optional = false): Node {
  const { def } = schema._zod
  if (is(def, 'optional')) return treeOf(def.innerType, true)
  if (is(def, 'nonoptional')) return { ...treeOf(def.innerType), optional: false }
  if (is(def, 'object')) {
    const keys = Object.keys(def.shape)
    if (keys.every((key) => ['low', 'typical', 'high'].includes(key))) return { type: 'range', optional }
    const fields = keys.map((key) => [key, treeOf(def.shape[key] as z.core.$ZodType)])
    return { type: 'object', optional, fields: Object.fromEntries(fields) }
  }
  if (is(def, 'array'))
    return { type: 'list', optional, of: treeOf(def.element), min: leastOf(schema), max: mostOf(schema) }
  if (is(def, 'enum')) return { type: 'choice', optional, options: Object.values(def.entries).map(String) }
  if (is(def, 'literal')) return { type: 'constant', optional, value: String(def.values[0]) }
  if (def.type === 'boolean') return { type: 'flag', optional }
  if (def.type === 'number') return { type: 'number', optional, whole: isWhole(schema) }
  if (def.type === 'string')
    return { type: 'text', optional, form: FORMS.get(schema) ?? 'plain', max: mostOf(schema) }
  throw new TypeError(`no form can be made of ${def.type}`)
}

interface Defs {
  optional: z.core.$ZodOptionalDef
  nonoptional: z.core.$ZodNonOptionalDef
  object: z.core.$ZodObjectDef
  array: z.core.$ZodArrayDef
  enum: z.core.$ZodEnumDef
  literal: z.core.$ZodLiteralDef<z.core.util.Literal>
}

const is = <T extends keyof Defs>(def: z.core.$ZodTypeDef, type: T): def is Defs[T] => def.type === type

/** The most characters or items that a schema allows. */
function mostOf({ _zod }: z.core.$ZodType): number {
  const limits = (_zod.def.checks ?? []).map(({ _zod: { def } }) =>
    def.check === 'max_length' && 'maximum' in def ? Number(def.maximum) : Infinity,
  )
  return Math.min(Infinity, ...limits)
}

function leastOf({ _zod }: z.core.$ZodType): number {
  const limits = (_zod.def.checks ?? []).map(({ _zod: { def } }) =>
    def.check === 'min_length' && 'minimum' in def ? Number(def.minimum) : 0,
  )
  return Math.max(0, ...limits)
}

const isWhole = ({ _zod }: z.core.$ZodType): boolean =>
  (_zod.def.checks ?? []).some(({ _zod: { def } }) => 'format' in def && def.format === 'safeint')

const made = new Map<WrittenKind, ObjectNode>()

/** The tree of a kind's body. */
export function bodyTree(kind: WrittenKind): ObjectNode {
  const known = made.get(kind)
  if (known) return known
  const tree = treeOf(SHAPES[kind].schema)
  if (tree.type !== 'object') throw new TypeError(`the body of a ${kind} is no object`)
  made.set(kind, tree)
  return tree
}

/** The node at a path such as `works.0.mixed.ingredients.2.parts`; undefined where the body has none. */
export const nodeAt = (tree: Node, path: string): Node | undefined =>
  path.split('.').reduce<Node | undefined>((node, key) => {
    if (node?.type === 'object') return Object.hasOwn(node.fields, key) ? node.fields[key] : undefined
    return node?.type === 'list' && /^\d{1,3}$/.test(key) ? node.of : undefined
  }, tree)
