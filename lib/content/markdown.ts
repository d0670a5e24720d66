import type { Nodes, PhrasingContent, Root, RootContent, Table } from 'mdast'
import { remark } from 'remark'
import remarkFrontmatter from 'remark-frontmatter'
import remarkGfm from 'remark-gfm'
import type { z } from 'zod'
import type { FaultList, Place } from './fault.ts'
import type { ContentFile } from './files.ts'
import { type Placed, readYaml } from './yaml.ts'

const parser = remark().use(remarkFrontmatter, ['yaml']).use(remarkGfm)

/** Where a page sends its reader, and where it says so. */
export interface Link {
  readonly to: string
  readonly place: Place
}

/** A page of content: its checked front matter, the paragraphs above any table, and what it links to. */
export interface Page<T> {
  readonly front: Placed<T>
  readonly blocks: readonly RootContent[]
  readonly links: readonly Link[]
}

/** Reads a page; raw HTML, images and a missing front matter are faults. */
export function readPage<T>(schema: z.ZodType<T>, file: ContentFile, faults: FaultList): Page<T> | undefined {
  const root: Root = parser.parse(file.text)
  const [first, ...blocks] = root.children
  const links: Link[] = []
  for (const node of walk(root)) {
    const place = placeOf(file, node)
    if (node.type === 'html') faults.add(place, 'raw HTML is not allowed')
    if (node.type === 'image' || node.type === 'imageReference')
      faults.add(place, 'images are not allowed here')
    if (node.type === 'link') links.push({ to: node.url, place })
  }
  if (first?.type !== 'yaml') {
    faults.add(
      { file: file.path, line: 1, column: 1 },
      'the page must begin with front matter between --- lines',
    )
    return undefined
  }
  const front = readYaml(schema, first.value, file.path, faults, 1)
  return front && { front, blocks, links }
}

/** Where a node begins. */
export function placeOf(file: ContentFile, node: Nodes): Place {
  return { file: file.path, line: node.position?.start.line ?? 1, column: node.position?.start.column ?? 1 }
}

/** A node and all below it. */
function* walk(node: Nodes): Generator<Nodes> {
  yield node
  if ('children' in node) for (const child of node.children) yield* walk(child)
}

/** The words of a node without their markup. */
export function textOf(node: Nodes): string {
  if ('value' in node) return node.type === 'html' ? '' : node.value
  if ('children' in node) return node.children.map((child: Nodes) => textOf(child)).join('')
  return node.type === 'break' ? ' ' : ''
}

/** Paragraphs as plain text; any other block is a fault. */
export function readParagraphs(
  file: ContentFile,
  blocks: readonly RootContent[],
  faults: FaultList,
): string[] {
  const paragraphs: string[] = []
  for (const block of blocks) {
    if (block.type === 'paragraph') paragraphs.push(textOf(block).replaceAll(/\s+/g, ' ').trim())
    else if (block.type !== 'html')
      faults.add(placeOf(file, block), `only paragraphs are allowed here, not ${block.type}`)
  }
  return paragraphs
}

/** One cell: its words, and the place where they begin. */
export interface Cell {
  readonly text: string
  readonly place: Place
}

/** The rows of a table below its head, each as its cells by the head's column names. */
export function readCells(
  file: ContentFile,
  table: Table,
): { head: Cell[]; rows: { cells: Map<string, Cell>; place: Place }[] } {
  const [headRow, ...rows] = table.children
  const head = (headRow?.children ?? []).map((cell) => readCell(file, cell, cell.children))
  return {
    head,
    rows: rows.map((row) => ({
      place: placeOf(file, row),
      cells: new Map(
        row.children.map((cell, i) => [head[i]?.text ?? '', readCell(file, cell, cell.children)]),
      ),
    })),
  }
}

function readCell(file: ContentFile, cell: Nodes, children: readonly PhrasingContent[]): Cell {
  return { text: textOf(cell).trim(), place: placeOf(file, children[0] ?? cell) }
}
