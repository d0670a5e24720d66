import { type Document, isMap, isNode, isScalar, LineCounter, parseDocument } from 'yaml'
import type { z } from 'zod'
import type { FaultList, Place } from './fault.ts'

type Path = readonly PropertyKey[]

/** Checked data with the place of each of its parts, for faults that are found later. */
export interface Placed<T> {
  readonly value: T
  readonly placeOf: (path: Path) => Place
}

/**
 * Reads YAML (JSON is a part of YAML) and checks it.
 *
 * @param linesBefore lines of the file above the text, when it is the front matter of a page
 * @returns nothing when there is a fault; every fault is added with its place
 */
export function readYaml<T>(
  schema: z.ZodType<T>,
  text: string,
  file: string,
  faults: FaultList,
  linesBefore = 0,
): Placed<T> | undefined {
  const lines = new LineCounter()
  const document = parseDocument(text, { lineCounter: lines, prettyErrors: false })
  const placeAt = (offset: number): Place => {
    const { line, col } = lines.linePos(offset)
    return { file, line: line + linesBefore, column: col }
  }
  if (document.errors.length > 0) {
    for (const error of document.errors) faults.add(placeAt(error.pos[0]), error.message)
    return undefined
  }
  const placeOf = (path: Path) => placeAt(offsetOf(document, path))
  const parsed = schema.safeParse(document.toJS())
  if (parsed.success) return { value: parsed.data, placeOf }
  for (const issue of parsed.error.issues) {
    if (issue.code === 'unrecognized_keys') {
      for (const key of issue.keys)
        faults.add(placeOf([...issue.path, key]), `unknown field ${[...issue.path, key].join('.')}`)
    } else {
      const name = issue.path.join('.')
      faults.add(placeOf(issue.path), name === '' ? issue.message : `${name}: ${issue.message}`)
    }
  }
  return undefined
}

/** Where the deepest part of the path that exists begins: its key in a map, its item in a list. */
function offsetOf(document: Document, path: Path): number {
  let offset = isNode(document.contents) ? (document.contents.range?.[0] ?? 0) : 0
  for (let depth = 1; depth <= path.length; depth++) {
    const parent = depth === 1 ? document.contents : document.getIn(path.slice(0, depth - 1), true)
    const key = path[depth - 1]
    if (isMap(parent)) {
      const pair = parent.items.find((item) => isScalar(item.key) && String(item.key.value) === String(key))
      if (!isScalar(pair?.key)) return offset
      offset = pair.key.range?.[0] ?? offset
    } else {
      const node = document.getIn(path.slice(0, depth), true)
      if (!isNode(node)) return offset
      offset = node.range?.[0] ?? offset
    }
  }
  return offset
}
