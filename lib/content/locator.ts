import type { SourceType } from '#lib/entry/source.ts'

/** How a place is named in a source, by the source's CSL type: the labels that may stand before a value. */
const LABELS: Readonly<Record<SourceType, readonly string[]>> = {
  book: [
    'bk',
    'vol.',
    'part',
    'ch.',
    '§',
    '§§',
    'p.',
    'pp.',
    'fol.',
    'l.',
    'no.',
    'nos',
    'art.',
    'table',
    'item',
  ],
  'article-journal': ['vol.', 'no.', 'p.', 'pp.', '§', 'table', 'fig.', 'abstract'],
  'article-magazine': ['vol.', 'no.', 'p.', 'pp.', '§', 'art.'],
  'entry-encyclopedia': ['vol.', 'p.', 'pp.', 'art.', '§', 'l.'],
  report: ['part', 'ch.', '§', '§§', 'p.', 'pp.', 'l.', 'table', 'annex'],
  standard: ['part', 'cl.', '§', 'table', 'annex', 'note', 'p.'],
  legislation: ['art.', 'annex', '§', 'p.'],
  webpage: ['§', '§§', 'art.', 'table', 'entry'],
  dataset: ['item', 'items', 'table', 'row', 'entry'],
  manuscript: ['fol.', 'leaf', 'p.', 'pp.'],
}

/**
 * Why a locator does not fit a source of this type, or nothing when it does. A locator is one or more
 * steps of a label and a value, `bk 2, ch. 5, § 1` or `pp. 78–80`. `l.` counts lines of the plain-text
 * edition that the source's address leads to.
 */
export function locatorFault(type: string, locator: string): string | undefined {
  const labels = LABELS[type as SourceType] ?? []
  for (const step of locator.split(/, (?=\D)/)) {
    const [label = '', ...value] = step.split(' ')
    if (!labels.includes(label)) {
      return `locator "${step}" does not fit a source of type ${type}; it begins with one of: ${labels.join(' ')}`
    }
    if (value.join('').trim() === '') return `locator "${step}" names no place after "${label}"`
  }
  return undefined
}
