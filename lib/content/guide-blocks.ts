import type { PhrasingContent, RootContent } from 'mdast'
import type { FaultList } from './fault.ts'
import type { ContentFile } from './files.ts'
import { targetOf } from './links.ts'
import { placeOf, textOf } from './markdown.ts'
import type { GuideBlock, GuideText } from './types.ts'

/** Headings of the second level, paragraphs and lists; any other block is a fault. */
export const readBlocks = (
  file: ContentFile,
  blocks: readonly RootContent[],
  faults: FaultList,
): GuideBlock[] => blocks.flatMap((block) => readBlock(file, block, faults))

function readBlock(file: ContentFile, block: RootContent, faults: FaultList): GuideBlock[] {
  if (block.type === 'heading' && block.depth === 2) {
    const text = textOf(block)
    return [{ kind: 'heading', id: idOf(text), text }]
  }
  if (block.type === 'paragraph') return [{ kind: 'paragraph', words: readWords(block.children) }]
  if (block.type === 'list') {
    const items = block.children.map(({ children }) =>
      children.flatMap((child) => (child.type === 'paragraph' ? readWords(child.children) : [])),
    )
    return [{ kind: 'list', ordered: block.ordered === true, items }]
  }
  if (block.type !== 'html') {
    faults.add(
      placeOf(file, block),
      `a guide has headings of the second level, paragraphs and lists, not ${block.type}`,
    )
  }
  return []
}

const idOf = (heading: string) =>
  heading
    .toLowerCase()
    .replaceAll(/[^a-z0-9]+/g, '-')
    .replaceAll(/^-|-$/g, '')

const readWords = (nodes: readonly PhrasingContent[]): GuideText[] =>
  nodes.map((node) => {
    const text = textOf(node).replaceAll(/\s+/g, ' ')
    return node.type === 'link' ? { text, to: targetOf(node.url) } : { text }
  })

/** The runs of words of a block: one of a heading or paragraph, one for each item of a list. */
export function runsOf(block: GuideBlock): readonly (readonly GuideText[])[] {
  if (block.kind === 'heading') return [[{ text: block.text }]]
  return block.kind === 'paragraph' ? [block.words] : block.items
}

/** What a block says, run by run. */
export const textsOf = (block: GuideBlock): readonly string[] =>
  runsOf(block).map((words) => words.map(({ text }) => text).join(''))

/** What must be the same in every language: the kind of block, how many runs it has, and where each run leads. */
export const shapeOf = (block: GuideBlock): string => {
  const leads = runsOf(block).map((words) =>
    words.flatMap(({ to }) => (to === undefined ? [] : [Object.values(to).join('/')])).join(' '),
  )
  return `${block.kind === 'list' && block.ordered ? 'numbered ' : ''}${block.kind} (${leads.join('; ')})`
}
