import { Collection } from './collect.ts'
import type { FaultList, Place } from './fault.ts'
import type { ContentFile } from './files.ts'
import { locatorFault } from './locator.ts'
import { sourceSchema } from './schemas.ts'
import type { Source } from './types.ts'
import { readYaml } from './yaml.ts'

/** Reads the sources, one CSL-JSON item in each file, named after its id. */
export function readSources(files: readonly ContentFile[], faults: FaultList): Collection<Source> {
  const sources = new Collection<Source>('source', faults)
  for (const file of files) {
    const read = readYaml(sourceSchema, file.text, file.path, faults)
    if (!read) {
      sources.markUnread(file.name)
      continue
    }
    const place = read.placeOf(['id'])
    if (read.value.id !== file.name)
      faults.add(place, `the file of source "${read.value.id}" must be ${read.value.id}.json`)
    // zod leaves no undefined where a field is absent, which its type cannot say.
    sources.add(read.value.id, read.value as Source, place)
  }
  return sources
}

/** Adds a fault when a citation names no known source, or a place that its source cannot have. */
export function checkCitation(
  sources: Collection<Source>,
  id: string,
  locator: string | undefined,
  place: Place,
  faults: FaultList,
): void {
  if (!sources.has(id)) faults.add(place, `unknown source "${id}"`)
  const source = sources.get(id)
  const fault = source && locator !== undefined ? locatorFault(source.type, locator) : undefined
  if (fault !== undefined) faults.add(place, fault)
}

/** `source-id` or `source-id, locator` as its two parts. */
export function splitCitation(text: string): { id: string; locator: string | undefined } {
  const comma = text.indexOf(', ')
  return comma < 0
    ? { id: text, locator: undefined }
    : { id: text.slice(0, comma), locator: text.slice(comma + 2) }
}
