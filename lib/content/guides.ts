import type { PhrasingContent, RootContent } from 'mdast'
import { Collection } from './collect.ts'
import type { FaultList } from './fault.ts'
import type { ContentFile } from './files.ts'
import { targetOf } from './links.ts'
import { type Link, placeOf, readPage, textOf } from './markdown.ts'
import { guideFront } from './schemas.ts'
import { checkCitation } from './sources.ts'
import type { Caution, Guide, GuideBlock, GuideText, Source } from './types.ts'

/** Reads the guides, one in each page, in the order they are read. */
export function readGuides(
  files: readonly ContentFile[],
  sources: Collection<Source>,
  cautions: Collection<Caution>,
  faults: FaultList,
): { guides: Collection<Guide>; links: Link[] } {
  const read = files.flatMap((file) => {
    const page = readPage(guideFront, file, faults)
    if (!page) return []
    const { value, placeOf: placeIn } = page.front
    value.sources.forEach(({ source, locator }, i) => {
      checkCitation(sources, source, locator, placeIn(['sources', i]), faults)
    })
    value.cautions.forEach((id, i) => {
      if (!cautions.has(id)) faults.add(placeIn(['cautions', i]), `unknown caution "${id}"`)
    })
    const blocks = page.blocks.flatMap((block) => readBlock(file, block, faults))
    const guide = { id: file.name, ...value, blocks } as Guide
    return [{ guide, place: placeIn(['order']), links: page.links }]
  })
  const guides = new Collection<Guide>('guide', faults)
  const placed = new Collection<string>('guide of order', faults)
  for (const { guide, place } of read.sort((a, b) => a.guide.order - b.guide.order)) {
    guides.add(guide.id, guide, place)
    placed.add(String(guide.order), guide.id, place)
  }
  return { guides, links: read.flatMap(({ links }) => links) }
}

function readBlock(file: ContentFile, block: RootContent, faults: FaultList): GuideBlock[] {
  if (block.type === 'heading' && block.depth === 2) return [{ kind: 'heading', text: textOf(block) }]
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

const readWords = (nodes: readonly PhrasingContent[]): GuideText[] =>
  nodes.map((node) => {
    const text = textOf(node).replaceAll(/\s+/g, ' ')
    return node.type === 'link' ? { text, to: targetOf(node.url) } : { text }
  })
