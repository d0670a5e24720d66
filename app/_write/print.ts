import type { WrittenKind } from '#lib/entry/body.ts'
import { bodyTree, type Node } from '#lib/entry/tree.ts'

/** What a field shows for an id that its value holds: the label of a material, say. */
export type NameId = (path: string, id: string) => string

/** A body as the text of its form's fields: the other way round of `readForm`. */
export function printForm(kind: WrittenKind, body: object, name: NameId): Record<string, string> {
  const typed: Record<string, string> = {}
  print(bodyTree(kind), '', body, typed, name)
  return typed
}

function print(node: Node, path: string, value: unknown, typed: Record<string, string>, name: NameId): void {
  if (value === undefined || value === null) return
  switch (node.type) {
    case 'object':
      for (const [key, field] of Object.entries(node.fields))
        print(field, path === '' ? key : `${path}.${key}`, Reflect.get(value as object, key), typed, name)
      return
    case 'list':
      if (node.of.type === 'choice') typed[path] = (value as string[]).join('\n')
      else
        (value as unknown[]).forEach((item, index) => {
          print(node.of, `${path}.${index}`, item, typed, name)
        })
      return
    case 'range':
      printRange(path, value as Partial<Record<string, number>>, typed)
      return
    case 'flag':
      if (value === true || node.optional) typed[path] = value === true ? 'yes' : 'no'
      return
    case 'constant':
      typed[path] = 'yes'
      return
    case 'number':
      typed[path] = plainNumber(Number(value))
      return
    default:
      typed[path] =
        node.type === 'text' && ['name', 'row', 'revision'].includes(node.form)
          ? name(path, String(value))
          : String(value)
  }
}

function printRange(path: string, range: Partial<Record<string, number>>, typed: Record<string, string>) {
  const { low = 0, typical, high = low } = range
  typed[path] = low === high ? plainNumber(low) : `${plainNumber(low)}–${plainNumber(high)}`
  if (typical !== undefined) typed[`${path}.typical`] = plainNumber(typical)
}

/** Digits with a decimal point, whatever the size: what `parseNumber` reads back as the same number. */
export function plainNumber(value: number): string {
  const text = String(value)
  return text.includes('e') ? value.toFixed(20).replace(/\.?0+$/, '') : text
}
