import { Collection } from './collect.ts'
import type { FaultList } from './fault.ts'
import type { ContentFile } from './files.ts'
import { readPage, readParagraphs } from './markdown.ts'
import { cautionFront } from './schemas.ts'
import { checkCitation } from './sources.ts'
import type { Caution, Material, Source } from './types.ts'

/** Reads the cautions, one in each page, the gravest first; checks the materials and sources that they name. */
export function readCautions(
  files: readonly ContentFile[],
  sources: Collection<Source>,
  materials: Collection<Material>,
  faults: FaultList,
): Collection<Caution> {
  const read = files.flatMap((file) => {
    const page = readPage(cautionFront, file, faults)
    return page ? [{ file, page }] : []
  })
  const cautions = new Collection<Caution>('caution', faults)
  const placed = new Collection<string>('caution of order', faults)
  for (const { file, page } of read.sort((a, b) => a.page.front.value.order - b.page.front.value.order)) {
    const { value, placeOf } = page.front
    value.sources.forEach(({ source, locator }, i) => {
      checkCitation(sources, source, locator, placeOf(['sources', i]), faults)
    })
    value.appliesTo.materials.forEach((id, i) => {
      if (!materials.has(id)) faults.add(placeOf(['appliesTo', 'materials', i]), `unknown material "${id}"`)
    })
    const body = readParagraphs(file, page.blocks, faults)
    if (value.es.body.length !== body.length)
      faults.add(
        placeOf(['es', 'body']),
        `${value.es.body.length} paragraphs in Spanish for ${body.length} in English; each has its own`,
      )
    placed.add(String(value.order), file.name, placeOf(['order']))
    cautions.add(file.name, { id: file.name, ...value, body } as Caution, placeOf([]))
  }
  return cautions
}
