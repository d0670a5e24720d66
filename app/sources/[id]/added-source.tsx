import { sourceOf } from '#lib/content/added.ts'
import type { Citing } from '#lib/db/citations.ts'
import type { Published } from '#lib/db/published.ts'
import type { SourceBody } from '#lib/entry/source.ts'
import { AddedHead } from '../../_ui/added-head.tsx'
import { asWritten } from '../../_ui/as-written.ts'
import { FullCitation, shortCitation } from '../../_ui/citation.tsx'
import { CiteSection } from '../../_ui/cite.tsx'
import { Section } from '../../_ui/section.tsx'
import { words } from '../../_words/index.ts'
import { CitingEntries } from './citing-entries.tsx'

/** A source that a contributor added, and the entries that cite it. */
export function AddedSource({ entry, citing }: { entry: Published<SourceBody>; citing: readonly Citing[] }) {
  const t = words('pages')
  const source = sourceOf(entry.slug, entry.body)
  return (
    <>
      <AddedHead
        title={shortCitation(source)}
        kicker={<a href="/sources">{t('sources.title')}</a>}
        lead={<FullCitation source={source} unnamed="" />}
        path="sources"
        entry={entry}
        invented={entry.body.invented}
      >
        {source.note !== undefined && (
          <p className="facts-line" {...asWritten()}>
            {source.note}
          </p>
        )}
      </AddedHead>
      <Section id="cited" title={t('source.cited')} note={t('source.citedNote')}>
        {citing.length === 0 ? <p>{t('source.nothingAdded')}</p> : <CitingEntries entries={citing} />}
      </Section>
      <CiteSection path="sources" entry={entry} title={source.title} />
    </>
  )
}
