import { formatList } from '../_words/format.ts'

/** What a citation of one version is made from. */
export interface Cited {
  readonly slug: string
  readonly revision: number
  readonly title: string
  /** Everyone whose words it holds or grew from, in the order in which they first wrote. */
  readonly authors: readonly string[]
  /** When this version was published. */
  readonly publishedAt: Date
  /** Where it stays, with scheme and host. */
  readonly address: string
  readonly digest: string
}

/** The name of the collection that every entry stands in. */
const COLLECTION = 'Putlog'

const day = ({ publishedAt }: Cited) => publishedAt.toISOString().slice(0, 10)
const keyOf = ({ slug, revision }: Cited) => `${slug}-${revision}`
const version = ({ revision }: Cited) => `revision ${revision}`
const sha = ({ digest }: Cited) => `SHA-256 ${digest}`

/** BibTeX, for LaTeX. Names in double braces stay as they are written. */
export const bibtex = (cited: Cited): string =>
  [
    `@misc{${keyOf(cited)},`,
    `  author = {${cited.authors.map((name) => `{${escapeTex(name)}}`).join(' and ')}},`,
    `  title = {{${escapeTex(cited.title)}}},`,
    `  year = {${day(cited).slice(0, 4)}},`,
    `  month = ${Number(day(cited).slice(5, 7))},`,
    `  howpublished = {${COLLECTION}, ${version(cited)}},`,
    `  url = {${cited.address}},`,
    `  note = {${sha(cited)}}`,
    '}',
    '',
  ].join('\n')

const TEX: Readonly<Record<string, string>> = {
  '\\': '\\textbackslash{}',
  '~': '\\textasciitilde{}',
  '^': '\\textasciicircum{}',
}
const escapeTex = (text: string) => text.replace(/[\\{}$&#_%~^]/g, (sign) => TEX[sign] ?? `\\${sign}`)

/** RIS, as reference managers exchange it: two letters, two spaces, a hyphen and a space begin each line. */
export const ris = (cited: Cited): string =>
  [
    ['TY', 'ELEC'],
    ['ID', keyOf(cited)],
    ...cited.authors.map((name) => ['AU', name]),
    ['TI', cited.title],
    ['PY', day(cited).slice(0, 4)],
    ['DA', `${day(cited).replaceAll('-', '/')}/`],
    ['ET', version(cited)],
    ['PB', COLLECTION],
    ['UR', cited.address],
    ['N1', sha(cited)],
    ['ER', ''],
  ]
    .map(([tag, text]) => `${tag}  - ${text}\r\n`)
    .join('')

/** CSL-JSON, as citation processors read it: a list of one item. */
export const cslJson = (cited: Cited): string =>
  `${JSON.stringify(
    [
      {
        id: keyOf(cited),
        type: 'webpage',
        title: cited.title,
        author: cited.authors.map((literal) => ({ literal })),
        issued: { 'date-parts': [day(cited).split('-').map(Number)] },
        'container-title': COLLECTION,
        version: version(cited),
        URL: cited.address,
        note: sha(cited),
      },
    ],
    null,
    2,
  )}\n`

/** One line of plain text. */
export const plain = (cited: Cited): string =>
  `${formatList(cited.authors)} (${day(cited).slice(0, 4)}). ${cited.title}, ${version(cited)}. ${COLLECTION}. ${cited.address}\n`

/** Each form that a citation can be taken away in, with its file name's ending and its media type. */
export const FORMS = {
  text: { write: plain, ending: 'txt', type: 'text/plain; charset=utf-8' },
  bibtex: { write: bibtex, ending: 'bib', type: 'application/x-bibtex; charset=utf-8' },
  ris: { write: ris, ending: 'ris', type: 'application/x-research-info-systems; charset=utf-8' },
  'csl-json': {
    write: cslJson,
    ending: 'json',
    type: 'application/vnd.citationstyles.csl+json; charset=utf-8',
  },
} as const
export type CitationForm = keyof typeof FORMS
export const isForm = (text: string): text is CitationForm => Object.hasOwn(FORMS, text)
