import { textsOf } from '#lib/content/guide-blocks.ts'
import { content, type Guide, type Labels, type Source, type TableRow } from '#lib/content/index.ts'
import { type FacetValues, type FoundKind, facetLine } from '#lib/entry/facets.ts'
import { lines, mark } from '#lib/entry/search-text.ts'
import { type Findable, lexemesOf, spelledWords, stemLine } from '#lib/entry/words.ts'
import { type Bits, bitsOf } from './bits.ts'
import { Columns } from './columns.ts'
import { MARKED } from './names.ts'
import type { Segment } from './segment.ts'

/** A page of content as it is found. */
export interface ContentPage extends Findable {
  readonly kind: FoundKind
  /** Of a row its ref, of a term that is no unit `vocabulary#term`, else the id of its file or entry. */
  readonly id: string
  /** The language of its texts and names, by how they are written; of the record no language is known. */
  readonly languages: ReadonlyMap<string, string>
}

export interface ContentSegment extends Segment {
  readonly pages: readonly (ContentPage & { readonly stems: string })[]
}

let made: ContentSegment | undefined

/** All of content, indexed once per process: it changes with the program alone. */
export function contentSegment(): ContentSegment {
  made ??= index([...pages()])
  return made
}

let words: ReadonlySet<string> | undefined

/** Every word of content as it is spelled. */
export function contentWords(): ReadonlySet<string> {
  words ??= new Set(contentSegment().pages.flatMap((page) => [...spelledWords(page)]))
  return words
}

function index(pages: readonly (ContentPage & { facets: FacetValues })[]): ContentSegment {
  const columns = new Columns()
  const postings = new Map<string, number[]>()
  pages.forEach((page, id) => {
    columns.set({
      id,
      facets: facetLine({ ...page.facets, kind: [page.kind] }),
      years: -1,
      publishedAt: 0,
      latitude: null,
      longitude: null,
    })
    for (const lexeme of lexemesOf(page)) {
      const ids = postings.get(lexeme)
      if (ids === undefined) postings.set(lexeme, [id])
      else ids.push(id)
    }
  })
  const stems = pages.map(stemLine)
  return {
    pages: pages.map((page, id) => ({ ...page, stems: stems[id] ?? '' })),
    columns,
    look: async (lexemes) =>
      new Map(
        lexemes.flatMap((lexeme): [string, Bits][] => {
          const ids = postings.get(lexeme)
          return ids === undefined ? [] : [[lexeme, bitsOf(ids, columns.size)]]
        }),
      ),
    inARow: async (ids, row) => ids.filter((id) => stems[id]?.includes(` ${row.join(' ')} `)),
  }
}

function* pages(): Generator<ContentPage & { facets: FacetValues }> {
  const { glossary, materials, vocabularies, tables, guides, cautions, sources } = content()
  for (const { id, term, also, definition, labels = {}, es } of glossary.values())
    yield page('term', id, term, definition, {
      english: also,
      names: labels,
      spanish: [es?.definition],
    })
  for (const { id, label, description, names, role, standingReason } of materials.values())
    yield page('material', id, label, description, {
      names,
      body: [standingReason],
      marks: [mark('material', id), mark('role', role)],
    })
  for (const [vocabulary, terms] of vocabularies)
    for (const { id, label, also = [], labels = {}, definition = '', es } of terms.values())
      yield page(...pageOfTerm(vocabulary, id), label, definition, {
        english: also,
        names: labels,
        spanish: [es?.definition],
        marks: vocabulary in MARKED ? [mark(MARKED[vocabulary as keyof typeof MARKED], id)] : [],
      })
  for (const { id, title, intro, rows } of tables.values()) {
    yield page('table', id, title, intro[0] ?? '', { body: intro.slice(1) })
    for (const row of rows) yield rowPage(row)
  }
  for (const guide of guides.values()) yield guidePage(guide)
  for (const { id, title, notice, body, appliesTo, es } of cautions.values())
    yield page('caution', id, title, notice, {
      names: { es: es.title },
      body,
      spanish: [es.notice, ...es.body],
      marks: appliesTo.materials.map((material) => mark('material', material)),
    })
  for (const source of sources.values()) yield sourcePage(source)
}

function sourcePage({ id, title, author = [], publisher, note, language = 'en' }: Source) {
  const authors = author.map(
    ({ family, given, literal }) => literal ?? [given, family].filter(Boolean).join(' '),
  )
  const titles = [title, ...lines([publisher]).split('\n')]
  return {
    ...page('source', id, title, authors.join(', '), { body: [publisher, note] }),
    languages: new Map([[lines([note]), 'en'], ...titles.map((text) => [text, language] as const)]),
  }
}

const pageOfTerm = (vocabulary: string, id: string): [FoundKind, string] =>
  vocabulary === 'units' ? ['unit', id] : ['vocabulary', `${vocabulary}#${id}`]

function rowPage(row: TableRow) {
  const materials = row.ingredients.map(({ material }) => material)
  return page('row', row.ref, row.label, row.measured, {
    body: [row.additions, row.notes, row.ambiguous, row.region, row.period, row.standingReason],
    marks: [...row.uses.map((use) => mark('use', use)), ...materials.map((one) => mark('material', one))],
    facets: { use: row.uses, binder: materials, row: [row.ref] },
  })
}

function guidePage({ id, title, summary, blocks, es }: Guide) {
  const linesOf = (some: Guide['blocks']) => some.map((block) => textsOf(block).join(' '))
  return page('guide', id, title, summary, {
    names: { es: es.title },
    body: linesOf(blocks),
    spanish: [...linesOf(es.blocks), es.summary],
  })
}

/** A page is in English but for its names elsewhere and what it says in Spanish. */
function page(
  kind: FoundKind,
  id: string,
  title: string,
  summary: string,
  told: {
    readonly english?: readonly string[]
    readonly names?: Labels
    readonly body?: readonly (string | undefined)[]
    readonly spanish?: readonly (string | undefined)[]
    readonly marks?: readonly string[]
    readonly facets?: FacetValues
  },
) {
  const { english = [], names = {}, body = [], spanish = [], marks = [], facets = {} } = told
  const foreign = Object.entries(names).flatMap(([language, some]) =>
    [some].flat().map((name) => [name, language] as const),
  )
  const inEnglish = [title, ...english, summary, ...lines(body).split('\n')]
  return {
    ...{ kind, id, title, summary, facets, marks: [...new Set(marks)] },
    names: [...english, ...foreign.map(([name]) => name)],
    body: lines([...body, ...spanish]),
    // What is spelled alike in several languages counts as English, or else as Spanish: pages are in these.
    languages: new Map([
      ...foreign,
      ...foreign.filter(([, language]) => language === 'es'),
      ...lines(spanish)
        .split('\n')
        .map((line) => [line, 'es'] as const),
      ...inEnglish.map((text) => [text, 'en'] as const),
    ]),
  }
}
