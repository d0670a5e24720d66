import { content } from '#lib/content/index.ts'
import type { CitationField } from '#lib/entry/fields.ts'
import type { Basis } from '#lib/mortar/range.ts'
import { words } from '../_words/index.ts'
import { citationLang, shortCitation } from './citation.tsx'
import { EntrySource } from './entry-source.tsx'
import { English, Written } from './written.tsx'

/** How we know something, in the word the site uses for it; its meaning is on the method page. */
export const BasisMark = ({ basis }: { basis: Basis }) => (
  <a className="basis" href={`/method#basis-${basis}`}>
    {words('terms')(`basis.${basis}.label`)}
  </a>
)

/**
 * Where a figure or statement comes from: the source, the place in it, and how well we know it.
 *
 * @param props.written whether it is cited by somebody who wrote for the record, and not by content
 */
export function SourceMark(props: { source?: string; locator?: string; basis?: Basis; written?: boolean }) {
  const { source: id } = props
  const known = id === undefined ? undefined : content().sources.get(id)
  // Content cites no source that a contributor added.
  const Locator = props.written === true || known === undefined ? Written : English
  return (
    <span className="source-mark">
      {known !== undefined && (
        <a href={`/sources/${known.id}`} {...citationLang(known)}>
          {shortCitation(known)}
        </a>
      )}
      {known === undefined && id !== undefined && <EntrySource id={id} />}
      {id !== undefined && props.locator !== undefined && (
        <>
          , <Locator>{props.locator}</Locator>
        </>
      )}
      {id !== undefined && props.basis !== undefined && ' · '}
      {props.basis !== undefined && <BasisMark basis={props.basis} />}
    </span>
  )
}

/** The same from the form that the sums use: `source-id` or `source-id, locator`. */
export function SourceText(props: { text: string; basis?: Basis; written?: boolean }) {
  const { text, ...rest } = props
  const comma = text.indexOf(', ')
  const source = comma < 0 ? text : text.slice(0, comma)
  return <SourceMark source={source} {...(comma >= 0 && { locator: text.slice(comma + 2) })} {...rest} />
}

/** Sources with their places, one a line. */
export const SourceList = ({ sources }: { sources: readonly CitationField[] }) => (
  <ul className="plain-list">
    {sources.map(({ source, locator }) => (
      <li key={`${source}-${locator ?? ''}`}>
        <SourceMark source={source} {...(locator !== undefined && { locator })} />
      </li>
    ))}
  </ul>
)
