import { Collection } from './collect.ts'
import type { FaultList } from './fault.ts'
import type { ContentFile } from './files.ts'
import { readPage, readParagraphs } from './markdown.ts'
import { cautionFront } from './schemas.ts'
import { checkCitation } from './sources.ts'
import type { Caution, Material, Source } from './types.ts'

/** Reads the cautions, one in each page, and checks the materials and sources that they name. */
export function readCautions(
  files: readonly ContentFile[],
  sources: Collection<Source>,
  materials: Collection<Material>,
  faults: FaultList,
): Collection<Caution> {
  const cautions = new Collection<Caution>('caution', faults)
  for (const file of files) {
    const page = readPage(cautionFront, file, faults)
    if (!page) continue
    const { value, placeOf } = page.front
    value.sources.forEach(({ source, locator }, i) => {
      checkCitation(sources, source, locator, placeOf(['sources', i]), faults)
    })
    value.appliesTo.materials.forEach((id, i) => {
      if (!materials.has(id)) faults.add(placeOf(['appliesTo', 'materials', i]), `unknown material "${id}"`)
    })
    const body = readParagraphs(file, page.blocks, faults)
    cautions.add(file.name, { id: file.name, ...value, body } as Caution, placeOf([]))
  }
  return cautions
}
