import { Collection } from './collect.ts'
import type { FaultList } from './fault.ts'
import type { ContentFile } from './files.ts'
import { glossarySchema } from './schemas.ts'
import type { GlossaryTerm } from './types.ts'
import { readYaml } from './yaml.ts'

/** Reads the glossary from all its files; a term must exist to be seen from another. */
export function readGlossary(files: readonly ContentFile[], faults: FaultList): Collection<GlossaryTerm> {
  const glossary = new Collection<GlossaryTerm>('glossary term', faults)
  const read = files.flatMap((file) => readYaml(glossarySchema, file.text, file.path, faults) ?? [])
  for (const { value, placeOf } of read) {
    value.terms.forEach((term, i) => {
      glossary.add(term.id, term as GlossaryTerm, placeOf(['terms', i, 'id']))
    })
  }
  for (const { value, placeOf } of read) {
    value.terms.forEach(({ id, see }, i) => {
      see.forEach((other, k) => {
        const place = placeOf(['terms', i, 'see', k])
        if (other === id) faults.add(place, 'a term cannot send its reader to itself')
        else if (!glossary.has(other)) faults.add(place, `unknown glossary term "${other}"`)
      })
    })
  }
  return glossary
}
