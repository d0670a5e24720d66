import type { FoundDocument } from '#lib/db/search/read.ts'
import type { FoundKind } from '#lib/entry/facets.ts'
import type { ContentPage } from './content-pages.ts'
import type { Why } from './explain.ts'

/** A page of any kind that was found. */
export interface FoundPage {
  readonly kind: FoundKind
  /** Slug of an entry; ref of a row of content; `vocabulary#term`; else the id in content. */
  readonly id: string
  /** Whether it is an entry of the record rather than content. */
  readonly entry: boolean
  /** Told of an invented wall or mortar of the demo. */
  readonly invented: boolean
  readonly title: string
  readonly summary: string
  readonly why: readonly Why[]
}

type Facts = Pick<FoundDocument, 'kind' | 'slug' | 'invented' | 'title' | 'summary'>

/** What is told of a page of content or an entry wherever it is listed. */
export function pageFacts(found: ContentPage | Facts): Omit<FoundPage, 'why'>
export function pageFacts(found: ContentPage | Facts | undefined): Omit<FoundPage, 'why'> | undefined
export function pageFacts(found: ContentPage | Facts | undefined): Omit<FoundPage, 'why'> | undefined {
  if (found === undefined) return undefined
  const entry = 'slug' in found
  return {
    kind: found.kind as FoundKind,
    id: entry ? found.slug : String(found.id),
    entry,
    invented: entry && found.invented,
    title: found.title,
    summary: found.summary,
  }
}
