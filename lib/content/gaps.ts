import type { Content } from './types.ts'

/** The languages that labels and names are wanted in, beside English. */
export const WANTED_LANGUAGES = ['fr', 'es', 'de', 'it', 'pt'] as const

/** What an author could still improve; nothing here is a fault. */
export interface Gaps {
  /** Figures without a source: `material.property`. */
  readonly unsourced: readonly string[]
  /** Rows and figures that nobody has checked in the source. */
  readonly memory: readonly string[]
  /** Sources that no content cites (the sums may), and materials that no row uses. */
  readonly unlinked: readonly string[]
  /** Terms and materials without a label in one of the wanted languages: `vocabulary/term: fr es`. */
  readonly untranslated: readonly string[]
}

/** Lists the gaps in checked content, each list in the order of the content. */
export function findGaps(content: Content): Gaps {
  const figures = [
    ...[...content.materials.values()].flatMap(({ id, properties }) =>
      Object.entries(properties).map(([name, property]) => ({ name: `${id}.${name}`, ...property })),
    ),
    ...[...content.vocabularies.values()].flatMap((terms) =>
      [...terms.values()].flatMap(({ id, figures = [] }) =>
        figures.map((figure) => ({ name: `${id}.${figure.what}`, ...figure })),
      ),
    ),
  ]
  return {
    unsourced: figures.filter(({ source }) => source === undefined).map(({ name }) => name),
    memory: [
      ...[...content.rows.values()].filter(({ basis }) => basis === 'memory').map(({ ref }) => ref),
      ...figures.filter(({ basis }) => basis === 'memory').map(({ name }) => name),
    ],
    unlinked: [...unusedSources(content), ...unusedMaterials(content)],
    untranslated: untranslated(content),
  }
}

/** Ids of all sources that rows, figures, terms, cautions and guides cite. */
export function citedSources(content: Content): ReadonlySet<string> {
  const idOf = (citation: string) => citation.split(', ')[0] ?? ''
  const terms = [...content.vocabularies.values()].flatMap((vocabulary) => [...vocabulary.values()])
  const properties = [...content.materials.values()].flatMap(({ properties }) => Object.values(properties))
  return new Set([
    ...[...content.rows.values()].map(({ citation }) => citation.source),
    ...[...content.cautions.values(), ...content.guides.values()].flatMap(({ sources }) =>
      sources.map(({ source }) => source),
    ),
    ...[...terms, ...terms.flatMap(({ figures = [] }) => figures), ...properties].flatMap(({ source }) =>
      source === undefined ? [] : [idOf(source)],
    ),
  ])
}

function unusedSources(content: Content): string[] {
  const cited = citedSources(content)
  return [...content.sources.keys()].filter((id) => !cited.has(id)).map((id) => `source ${id}`)
}

function unusedMaterials(content: Content): string[] {
  const used = new Set(
    [...content.rows.values()].flatMap((row) => row.ingredients.map((one) => one.material)),
  )
  return [...content.materials.keys()].filter((id) => !used.has(id)).map((id) => `material ${id}`)
}

function untranslated(content: Content): string[] {
  const missing = (name: string, has: Readonly<Record<string, unknown>>) => {
    const wanted = WANTED_LANGUAGES.filter((language) => has[language] === undefined)
    return wanted.length === 0 ? [] : [`${name}: ${wanted.join(' ')}`]
  }
  return [
    ...[...content.vocabularies].flatMap(([vocabulary, terms]) =>
      [...terms.values()].flatMap(({ id, labels = {} }) => missing(`${vocabulary}/${id}`, labels)),
    ),
    ...[...content.materials.values()].flatMap(({ id, names }) => missing(`material/${id}`, names)),
    ...[...content.glossary.values()].flatMap(({ id, labels = {} }) => missing(`glossary/${id}`, labels)),
  ]
}
