import { isPaged } from '#lib/content/pages.ts'
import type { FoundPage } from '#lib/search/index.ts'

/** Where a thing that was found has its page, or its place on one. */
export function pageAddress({ kind, id, entry }: Pick<FoundPage, 'kind' | 'id' | 'entry'>): string {
  switch (kind) {
    case 'row':
      return entry ? `/rows/${id}` : `/tables/${id}`
    case 'term':
      return `/glossary#${id}`
    case 'caution':
      return `/cautions#${id}`
    case 'unit':
      return `/terms/units/${id}`
    case 'vocabulary': {
      const [vocabulary = '', term] = id.split('#')
      return isPaged(vocabulary) ? `/terms/${vocabulary}/${term}` : `/terms/${id}`
    }
    default:
      return `/${kind}s/${id}`
  }
}
