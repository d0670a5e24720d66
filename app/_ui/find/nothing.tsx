import type { CaseFacet } from '#lib/entry/facets.ts'
import type { Dropped } from '#lib/search/index.ts'
import { words } from '../../_words/index.ts'
import { Notice } from '../notice.tsx'
import { type CasesAsked, casesAddress, without } from './asked.ts'
import { choiceLabel } from './chips.tsx'
import { facetName } from './labels.ts'

/** Where no case fits: which one choice to leave out, and how many that would bring. */
export function NothingFits(props: {
  path: string
  asked: CasesAsked
  dropped: readonly Dropped[]
  titles: ReadonlyMap<string, string>
}) {
  const { path, asked, dropped, titles } = props
  const t = words('find')
  return (
    <Notice kind="note" title={t('nothing.title')}>
      {dropped.length === 0 && <p>{t.rich('nothing.none', { link: (text) => <a href={path}>{text}</a> })}</p>}
      <ul>
        {dropped.map((one) => {
          const { label, rest } = withoutIt(one, asked, titles)
          return (
            <li key={`${one.facet} ${one.value}`}>
              {t.rich(one.facet === 'text' ? 'nothing.dropText' : 'nothing.drop', {
                label,
                count: one.brings,
                link: (text) => <a href={casesAddress(path, rest)}>{text}</a>,
              })}
            </li>
          )
        })}
      </ul>
    </Notice>
  )
}

/** What would be left out, in words, and what is then asked. */
function withoutIt({ facet, value }: Dropped, asked: CasesAsked, titles: ReadonlyMap<string, string>) {
  const { text, filter } = asked
  if (facet === 'text')
    return {
      label: value ?? text,
      rest: { ...asked, text: value === undefined ? '' : textWithout(text, value) },
    }
  const chosen = value ?? (facet === 'minYears' || facet === 'maxYears' ? filter[facet] : undefined)
  return {
    label:
      chosen === undefined
        ? facetName(facet as CaseFacet)
        : choiceLabel({ name: facet, value: String(chosen) }, titles),
    rest: { ...asked, filter: without(filter, facet, value) },
  }
}

/** A question without one of its parts, with the quotes that may stand around it. */
export const textWithout = (text: string, part: string): string => {
  const at = text.toLowerCase().indexOf(part.toLowerCase())
  const rest = at < 0 ? '' : `${text.slice(0, at)} ${text.slice(at + part.length)}`
  return rest.replace(/""/g, ' ').replace(/\s+/g, ' ').trim()
}
