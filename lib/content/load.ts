import { readCautions } from './cautions.ts'
import { editionOf } from './edition.ts'
import { FaultList } from './fault.ts'
import { readFolder } from './files.ts'
import { deepFreeze, FrozenMap } from './freeze.ts'
import { readGlossary } from './glossary.ts'
import { readGuides } from './guides.ts'
import { checkAncestors, checkLinks, checkMemoryApart } from './links.ts'
import { readMaterials } from './materials.ts'
import { readSources } from './sources.ts'
import { readTables } from './tables.ts'
import type { Content, ContentFault } from './types.ts'
import { readVocabularies } from './vocabularies.ts'

/** All content, or all that is wrong with it. There is no lenient mode. */
export type ContentOutcome =
  | { readonly ok: true; readonly content: Content }
  | { readonly ok: false; readonly faults: readonly ContentFault[] }

/** Reads and checks a content folder. Reads files; throws only when they cannot be read. */
export function loadContent(dir: string): ContentOutcome {
  const faults = new FaultList()
  const sources = readSources(readFolder(dir, 'sources', '.json'), faults)
  const cautionFiles = readFolder(dir, 'cautions', '.md')
  const isCaution = (id: string) => cautionFiles.some(({ name }) => name === id)
  const materials = readMaterials(readFolder(dir, 'materials', '.yaml'), sources, isCaution, faults)
  const { vocabularies, vocabularyHeads } = readVocabularies(
    readFolder(dir, 'vocabularies', '.yaml'),
    sources,
    faults,
  )
  const cautions = readCautions(cautionFiles, sources, materials, faults)
  const { tables, rows, links } = readTables(readFolder(dir, 'tables', '.md'), sources, materials, faults)
  const glossary = readGlossary(readFolder(dir, 'glossary', '.yaml'), faults)
  const { guides, links: guideLinks } = readGuides(
    readFolder(dir, 'guides', '.md'),
    sources,
    cautions,
    faults,
  )
  checkAncestors(rows, faults)
  checkLinks([...links, ...guideLinks], rows, dir, faults)
  checkMemoryApart(rows, faults)
  if (!faults.isEmpty) return { ok: false, faults: faults.sorted() }
  const content = {
    sources: new FrozenMap(sources.entries()),
    tables: new FrozenMap(tables.entries()),
    rows: new FrozenMap(rows.entries()),
    materials: new FrozenMap(materials.entries()),
    vocabularies,
    vocabularyHeads,
    cautions: new FrozenMap(cautions.entries()),
    glossary: new FrozenMap(glossary.entries()),
    guides: new FrozenMap(guides.entries()),
  }
  const edition = editionOf(content.materials.values(), content.rows.values())
  return { ok: true, content: deepFreeze({ edition, ...content }) }
}
