import type { WrittenKind } from '#lib/entry/body.ts'
import { bodyTree, type Node } from '#lib/entry/tree.ts'

/** Beside the body, what no entry is sent without. */
const ALWAYS = ['rights.licence', 'interests', 'entry.note']

/** Whether an entry of this kind cannot be sent without this field. In an item of a list: once there is one. */
export function isNeeded(kind: WrittenKind, name: string): boolean {
  if (ALWAYS.includes(name)) return true
  let node: Node | undefined = bodyTree(kind)
  for (const key of name.split('.')) {
    if (node?.type === 'object') node = node.fields[key]
    else if (node?.type === 'list') node = node.min > 0 ? node.of : undefined
    else return false
    if (node === undefined || node.optional) return false
  }
  if (node.type === 'flag' || (node.type === 'list' && node.min === 0)) return false
  return !(node.type === 'choice' && node.options.includes('not-recorded'))
}
