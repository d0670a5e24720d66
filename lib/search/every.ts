import type { CaseSummary } from '#lib/db/cases.ts'
import { foundCases, foundDocuments } from '#lib/db/search/read.ts'
import type { FoundKind } from '#lib/entry/facets.ts'
import { contentSegment } from './content-pages.ts'
import { now } from './current.ts'
import { allInOrder } from './order.ts'
import { type FoundPage, pageFacts } from './page-facts.ts'
import { batchesOf } from './rank.ts'
import { type Asked, casesFound, search } from './sought.ts'

/** All cases that are found, newest documents last, however many: for lists that are taken away. */
export async function* everyCase({
  text,
  filter,
}: Pick<Asked, 'text' | 'filter'>): AsyncGenerator<CaseSummary[]> {
  const ids = await casesFound({ text, filter }, (found) => found)
  for (const some of batchesOf(ids)) {
    const { rows } = await foundCases(some)
    yield rows.map(({ document: _, ...row }) => row)
  }
}

/** All pages that words find, in the order of {@link findAll}, however many: one search, then rows piece by piece. */
export async function* everyPage({
  text,
  kind,
}: Pick<Asked, 'text'> & { kind?: FoundKind | undefined }): AsyncGenerator<Omit<FoundPage, 'why'>[]> {
  const content = contentSegment()
  const ids = await now(async (record) => {
    const sought = await search([record, content], { text }, kind === undefined ? {} : { kind: [kind] })
    return sought.parts.every(({ match }) => match === undefined) ? new Int32Array(0) : allInOrder(sought)
  })
  for (const some of batchesOf(ids)) {
    const { rows } = await foundDocuments(
      some.filter((id) => id >= 0),
      'without-text',
    )
    const entryOf = new Map(rows.map((row) => [row.document, row]))
    yield some.flatMap((id) => pageFacts(id < 0 ? content.pages[-id - 1] : entryOf.get(id)) ?? [])
  }
}
