import type { Basis } from '#lib/mortar/range.ts'
import { words } from '../../_words/index.ts'
import type { BenchData } from './brought.ts'

/**
 * Where a figure comes from, from the citations that the page brought along: `source-id, locator` and how
 * well it is known. A source whose citation is not here stands with its id.
 */
export function Cited({
  text,
  basis,
  cites,
}: {
  text?: string | undefined
  basis?: Basis | undefined
  cites: BenchData['cites']
}) {
  const comma = text?.indexOf(', ') ?? -1
  const id = text === undefined || comma < 0 ? text : text.slice(0, comma)
  return (
    <span className="source-mark">
      {id !== undefined && <a href={`/sources/${id}`}>{cites[id] ?? id}</a>}
      {comma >= 0 && text?.slice(comma)}
      {id !== undefined && basis !== undefined && ' · '}
      {basis !== undefined && (
        <a className="basis" href={`/method#basis-${basis}`}>
          {words('terms')(`basis.${basis}.label`)}
        </a>
      )}
    </span>
  )
}
