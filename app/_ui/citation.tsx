import type { Source } from '#lib/content/types.ts'
import { formatList, formatYear } from '../_words/format.ts'
import { words } from '../_words/index.ts'

const surname = (author: { family?: string; given?: string; literal?: string }) =>
  author.family ?? author.literal ?? author.given ?? ''

function yearOf(source: Source): string | undefined {
  const year = source.issued?.['date-parts'][0]?.[0]
  if (year === undefined) return undefined
  const printed = formatYear(year)
  return source.issued?.circa === true ? words('common')('year.about', { year: printed }) : printed
}

/** A source in a few words: its authors' surnames, or its title where it has none, and its year. */
export function shortCitation(source: Source): string {
  const t = words('common')
  const names = (source.author ?? []).map(surname)
  const [first = source.title] = names
  const who =
    names.length > 2 ? t('citation.others', { first }) : formatList(names.length > 0 ? names : [first])
  const year = yearOf(source)
  return year === undefined ? who : t('citation.short', { who, year })
}

/** Language of a source that names none: content's are English, one that a contributor added may be in any. */
type Unnamed = 'en' | ''

/** For an element whose words are {@link shortCitation}: a title is in the language that its source is in. */
export const citationLang = (
  { author = [], language }: Source,
  unnamed: Unnamed = 'en',
): { lang?: string } => (author.length === 0 ? { lang: language ?? unnamed } : {})

/** A source in full, as a bibliography gives it, with its lasting address where it has one. */
export function FullCitation({ source, unnamed = 'en' }: { source: Source; unnamed?: Unnamed }) {
  const t = words('common')
  const authors = (source.author ?? []).map((author) =>
    author.given !== undefined && author.family !== undefined
      ? `${author.family}, ${author.given}`
      : surname(author),
  )
  const { language = unnamed } = source
  const publisher =
    source.publisher && source['publisher-place']
      ? t('citation.publisher', { place: source['publisher-place'], publisher: source.publisher })
      : (source.publisher ?? source['publisher-place'])
  const ours = (text: string | undefined) => text && `${closed(text)} `
  const theirs = (text: string | undefined) => text && <span lang={language}>{`${closed(text)} `}</span>
  const address = source.DOI === undefined ? source.URL : `https://doi.org/${source.DOI}`
  const year = yearOf(source)
  return (
    <>
      {authors.length > 0 && `${closed(formatList(authors))} `}
      <cite lang={language}>{source.title}</cite>
      {year !== undefined && ` (${year})`}
      {'. '}
      {theirs(source['container-title'])}
      {ours(source.edition && t('citation.edition', { edition: source.edition }))}
      {ours(source.volume && t('citation.volume', { volume: source.volume }))}
      {theirs(source.number)}
      {theirs(publisher)}
      {ours(
        source.page &&
          t(/^\d+$/.test(source.page) ? 'citation.page' : 'citation.pages', { pages: source.page }),
      )}
      {ours(source.ISBN && t('citation.isbn', { isbn: source.ISBN }))}
      {address !== undefined && (
        <a href={address} rel="noreferrer">
          {source.DOI === undefined ? address : t('citation.doi', { doi: source.DOI })}
        </a>
      )}
    </>
  )
}

/** With one full stop, also after an initial or an abbreviation. */
const closed = (text: string): string => (text.endsWith('.') ? text : `${text}.`)
