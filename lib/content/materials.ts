import { Collection } from './collect.ts'
import type { FaultList } from './fault.ts'
import type { ContentFile } from './files.ts'
import { materialSchema } from './schemas.ts'
import { checkCitation, splitCitation } from './sources.ts'
import type { Material, Source } from './types.ts'
import { readYaml } from './yaml.ts'

/** Reads the materials, one in each file, named by the file; the files of cautions name the cautions. */
export function readMaterials(
  files: readonly ContentFile[],
  sources: Collection<Source>,
  isCaution: (id: string) => boolean,
  faults: FaultList,
): Collection<Material> {
  const materials = new Collection<Material>('material', faults)
  for (const file of files) {
    const read = readYaml(materialSchema, file.text, file.path, faults)
    if (!read) {
      materials.markUnread(file.name)
      continue
    }
    const { value, placeOf } = read
    if (value.standing !== 'in-use' && value.standingReason === undefined) {
      faults.add(placeOf(['standing']), `standing ${value.standing} needs a standingReason`)
    }
    for (const [name, property] of Object.entries(value.properties)) {
      if (property?.source === undefined) continue
      const { id, locator } = splitCitation(property.source)
      checkCitation(sources, id, locator, placeOf(['properties', name, 'source']), faults)
    }
    value.cautions.forEach((id, i) => {
      if (!isCaution(id)) faults.add(placeOf(['cautions', i]), `unknown caution "${id}"`)
    })
    materials.add(file.name, { id: file.name, ...value } as Material, placeOf([]))
  }
  return materials
}
