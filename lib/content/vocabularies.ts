import { Collection } from './collect.ts'
import type { FaultList } from './fault.ts'
import type { ContentFile } from './files.ts'
import { FrozenMap } from './freeze.ts'
import { vocabularySchema } from './schemas.ts'
import { checkCitation, splitCitation } from './sources.ts'
import type { Source, Term, VocabularyHead } from './types.ts'
import { readYaml } from './yaml.ts'

/**
 * Reads the vocabularies, one in each file, and what heads them; a broader term must exist, and no term be broader
 * than itself.
 */
export function readVocabularies(
  files: readonly ContentFile[],
  sources: Collection<Source>,
  faults: FaultList,
): {
  vocabularies: FrozenMap<string, ReadonlyMap<string, Term>>
  vocabularyHeads: FrozenMap<string, VocabularyHead>
} {
  const vocabularies: [string, ReadonlyMap<string, Term>][] = []
  const heads: [string, VocabularyHead][] = []
  for (const file of files) {
    const read = readYaml(vocabularySchema, file.text, file.path, faults)
    if (!read) continue
    const terms = new Collection<Term>('term', faults)
    read.value.terms.forEach((term, i) => {
      terms.add(term.id, term as Term, read.placeOf(['terms', i, 'id']))
      const check = (source: string | undefined, path: readonly PropertyKey[]) => {
        if (source === undefined) return
        const { id, locator } = splitCitation(source)
        checkCitation(sources, id, locator, read.placeOf(['terms', i, ...path]), faults)
      }
      check(term.source, ['source'])
      term.figures?.forEach((figure, at) => {
        check(figure.source, ['figures', at, 'source'])
      })
    })
    read.value.terms.forEach(({ id, broader }, i) => {
      const place = read.placeOf(['terms', i, 'broader'])
      if (broader !== undefined && !terms.has(broader)) faults.add(place, `unknown broader term "${broader}"`)
      else if (isCircular(terms, id)) faults.add(place, `term "${id}" is broader than itself`)
    })
    vocabularies.push([file.name, new FrozenMap(terms.entries())])
    const { terms: _, ...head } = read.value
    heads.push([file.name, head as VocabularyHead])
  }
  return {
    vocabularies: new FrozenMap(vocabularies),
    vocabularyHeads: new FrozenMap(heads),
  }
}

function isCircular(terms: Collection<Term>, id: string): boolean {
  const seen = new Set<string>()
  for (let at = terms.get(id)?.broader; at !== undefined; at = terms.get(at)?.broader) {
    if (at === id) return true
    if (seen.has(at)) return false
    seen.add(at)
  }
  return false
}
