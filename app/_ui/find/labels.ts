import type { CaseFacet } from '#lib/entry/facets.ts'
import { FACET_VOCABULARIES } from '#lib/search/case-query.ts'
import { words } from '../../_words/index.ts'
import { labelOf, materialLabel } from '../label.ts'

/** What a facet is called. */
export const facetName = (facet: CaseFacet | 'years'): string => words('find')(`facet.${facet}`)

/** What one value of a facet is called; a recipe or row without a known title keeps its address. */
export function facetLabel(
  facet: CaseFacet,
  id: string,
  titles: ReadonlyMap<string, string> = new Map(),
): string {
  const t = words('find')
  if (facet in FACET_VOCABULARIES)
    return labelOf(FACET_VOCABULARIES[facet as keyof typeof FACET_VOCABULARIES], id)
  switch (facet) {
    case 'binder':
      return materialLabel(id)
    case 'country':
      return labelOf('countries', id)
    case 'region':
      return id.slice(id.indexOf(':') + 1)
    case 'quality':
    case 'disputed':
      return t(`value.${facet}.${id}` as 'value.disputed.yes')
    default:
      return titles.get(id) ?? id
  }
}
