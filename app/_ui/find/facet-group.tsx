import type { ReactNode } from 'react'
import { termLine } from '#lib/content/term-tree.ts'
import type { CaseFacet } from '#lib/entry/facets.ts'
import { words } from '../../_words/index.ts'
import { facetLabel, facetName } from './labels.ts'

export interface FacetCount {
  readonly id: string
  readonly count: number
}

/** How many values are offered before the rest is folded away. */
const SHOWN = 12

/** One facet as boxes to tick, folded unless something in it is chosen; each box says what it would leave. */
export function FacetGroup(props: {
  facet: CaseFacet
  counts: readonly FacetCount[]
  chosen: readonly string[]
  open?: boolean
}) {
  const { facet, counts, chosen, open = false } = props
  const t = words('find')
  const offered = counts.filter(({ id, count }) => count > 0 || chosen.includes(id))
  if (offered.length === 0) return null
  return (
    <details className="facet" open={open || chosen.length > 0}>
      <summary>{t('facet.summary', { name: facetName(facet), chosen: chosen.length })}</summary>
      <fieldset>
        <legend className="hidden-words">{facetName(facet)}</legend>
        {facet === 'unit' ? (
          <Tree counts={offered} chosen={chosen} />
        ) : (
          <Flat facet={facet} counts={offered} chosen={chosen} />
        )}
      </fieldset>
    </details>
  )
}

function Flat({
  facet,
  counts,
  chosen,
}: {
  facet: CaseFacet
  counts: readonly FacetCount[]
  chosen: readonly string[]
}) {
  const t = words('find')
  const box = (one: FacetCount) => (
    <Box key={one.id} facet={facet} count={one} isChosen={chosen.includes(one.id)} />
  )
  // What is chosen stands first, so that nothing that narrows the list is folded away.
  const sorted = [...counts].sort((a, b) => Number(chosen.includes(b.id)) - Number(chosen.includes(a.id)))
  return (
    <>
      <ul className="boxes">{sorted.slice(0, SHOWN).map(box)}</ul>
      {sorted.length > SHOWN && (
        <details>
          <summary>{t('facet.more', { count: sorted.length - SHOWN })}</summary>
          <ul className="boxes">{sorted.slice(SHOWN).map(box)}</ul>
        </details>
      )}
    </>
  )
}

/** Units under what they are a kind of, as far down as anything is counted. */
function Tree({ counts, chosen }: { counts: readonly FacetCount[]; chosen: readonly string[] }) {
  const ids = new Set(counts.map(({ id }) => id))
  const parentOf = (id: string) => termLine('units', id).find((one) => one !== id && ids.has(one))
  const branch = (parent: string | undefined): ReactNode => {
    const here = counts.filter(({ id }) => parentOf(id) === parent)
    return here.length === 0 ? null : (
      <ul className="boxes">
        {here.map((one) => (
          <Box key={one.id} facet="unit" count={one} isChosen={chosen.includes(one.id)}>
            {branch(one.id)}
          </Box>
        ))}
      </ul>
    )
  }
  return branch(undefined)
}

function Box(props: { facet: CaseFacet; count: FacetCount; isChosen: boolean; children?: ReactNode }) {
  const { facet, count, isChosen, children } = props
  return (
    <li>
      <label className="choice">
        <input type="checkbox" name={facet} value={count.id} defaultChecked={isChosen} />
        <span>
          {facetLabel(facet, count.id)}{' '}
          <span className="box-count">{words('find')('facet.count', { count: count.count })}</span>
        </span>
      </label>
      {children}
    </li>
  )
}
