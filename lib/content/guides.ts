import { Collection } from './collect.ts'
import type { FaultList } from './fault.ts'
import type { ContentFile } from './files.ts'
import { readBlocks, shapeOf } from './guide-blocks.ts'
import { type Link, readPage } from './markdown.ts'
import { guideFront, guideWordsFront } from './schemas.ts'
import { checkCitation } from './sources.ts'
import type { Caution, Guide, GuideBlock, GuideWords, Source } from './types.ts'

/** How the name of a guide's Spanish file ends: `sand.es.md` stands beside `sand.md`. */
const SPANISH = /\.es$/

/** Reads the guides, one in each page with its Spanish beside it, in the order they are read. */
export function readGuides(
  files: readonly ContentFile[],
  sources: Collection<Source>,
  cautions: Collection<Caution>,
  faults: FaultList,
): { guides: Collection<Guide>; links: Link[] } {
  const inSpanish = new Map(
    files.flatMap((file) => (SPANISH.test(file.name) ? [[file.name.replace(SPANISH, ''), file]] : [])),
  )
  const read = files.flatMap((file) => {
    if (SPANISH.test(file.name)) return []
    const page = readPage(guideFront, file, faults)
    if (!page) return []
    const { value, placeOf: placeIn } = page.front
    value.sources.forEach(({ source, locator }, i) => {
      checkCitation(sources, source, locator, placeIn(['sources', i]), faults)
    })
    value.cautions.forEach((id, i) => {
      if (!cautions.has(id)) faults.add(placeIn(['cautions', i]), `unknown caution "${id}"`)
    })
    const blocks = readBlocks(file, page.blocks, faults)
    const spanish = inSpanish.get(file.name)
    inSpanish.delete(file.name)
    if (spanish === undefined) faults.add(placeIn([]), `its Spanish is missing: ${file.name}.es.md`)
    const es = spanish && readSpanish(spanish, blocks, faults)
    const guide = { id: file.name, ...value, blocks, es } as Guide
    return [{ guide, place: placeIn(['order']), links: page.links }]
  })
  for (const { path } of inSpanish.values())
    faults.add({ file: path, line: 1, column: 1 }, 'there is no such guide in English')
  const guides = new Collection<Guide>('guide', faults)
  const placed = new Collection<string>('guide of order', faults)
  for (const { guide, place } of read.sort((a, b) => a.guide.order - b.guide.order)) {
    guides.add(guide.id, guide, place)
    placed.add(String(guide.order), guide.id, place)
  }
  return { guides, links: read.flatMap(({ links }) => links) }
}

/** The same guide in Spanish: block by block of the same kind, run by run with the same links. */
function readSpanish(
  file: ContentFile,
  english: readonly GuideBlock[],
  faults: FaultList,
): GuideWords | undefined {
  const page = readPage(guideWordsFront, file, faults)
  if (!page) return undefined
  const blocks = readBlocks(file, page.blocks, faults)
  const at = Array.from({ length: Math.max(blocks.length, english.length) }).findIndex(
    (_, i) => shape(blocks[i]) !== shape(english[i]),
  )
  if (at >= 0)
    faults.add(
      page.front.placeOf([]),
      `block ${at + 1} is ${shape(blocks[at])}; in English it is ${shape(english[at])}`,
    )
  // One place in a guide has one address, whatever the language.
  const placed = blocks.map((block, i) => {
    const like = english[i]
    return block.kind === 'heading' && like?.kind === 'heading' ? { ...block, id: like.id } : block
  })
  return { ...page.front.value, blocks: placed }
}

const shape = (block: GuideBlock | undefined) => (block === undefined ? 'missing' : shapeOf(block))
