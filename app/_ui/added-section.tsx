import type { LibrarySummary } from '#lib/db/library.ts'
import { words } from '../_words/index.ts'
import { AddedList } from './added-list.tsx'
import { InventedNotice } from './invented.tsx'
import { NextPage } from './next-page.tsx'
import { Section } from './section.tsx'

/** What contributors added beside a list of content's own. */
export function AddedSection(props: {
  kind: 'source' | 'material'
  entries: readonly LibrarySummary[]
  next: string | null
}) {
  const { kind, entries, next } = props
  const t = words('added')
  return (
    <Section id="added" title={t(`list.${kind}`)}>
      {entries.some(({ invented }) => invented) && <InventedNotice page="list" />}
      {entries.length === 0 ? <p>{t(`none.${kind}`)}</p> : <AddedList entries={entries} />}
      <NextPage path={`/${kind}s`} choices={{}} after={undefined} next={next} />
    </Section>
  )
}
