import { authorsBehind } from '#lib/db/authors.ts'
import { citePath, versionsPath } from '../_versions/address.ts'
import { formatDate, formatList } from '../_words/format.ts'
import { words } from '../_words/index.ts'
import { asWritten } from './as-written.ts'
import { namesOf } from './author.ts'
import { Facts } from './facts.tsx'
import { Section } from './section.tsx'
import type { EntryPath } from './superseded.tsx'
import { Written } from './written.tsx'

interface Entry {
  readonly slug: string
  readonly entryId: string
  readonly revision: number
  readonly author: string
  readonly submittedAt: Date
  readonly publishedAt: Date
  readonly note: string
  readonly digest: string
}

/** What this page is a revision of, one line to cite it by, and the ways to its history. */
export async function CiteSection(props: { path: EntryPath; entry: Entry; title: string }) {
  const { path, entry, title } = props
  const t = words('pages')
  const keys = await authorsBehind(entry.entryId, entry.revision)
  const nameOf = await namesOf([...keys, entry.author])
  const authors = formatList(keys.map(nameOf))
  const address = `/${path}/${entry.slug}?revision=${entry.revision}`
  return (
    <Section id="cite" title={t('cite.title')} note={t('cite.sectionNote')}>
      <p>
        {t.rich('cite.line', {
          author: authors,
          year: entry.publishedAt.toISOString().slice(0, 4),
          title,
          revision: entry.revision,
          address,
          name: (text) => <cite {...asWritten()}>{text}</cite>,
          link: (text) => <a href={address}>{text}</a>,
        })}
      </p>
      <Facts
        facts={{
          [t('cite.revision')]: t('cite.revisionOn', {
            revision: entry.revision,
            date: formatDate(entry.publishedAt),
          }),
          [t('cite.author')]: nameOf(entry.author),
          [t('cite.authors')]: keys.length > 1 ? authors : null,
          [t('cite.note')]: <Written>{entry.note}</Written>,
          [t('cite.digest')]: <code>{entry.digest}</code>,
        }}
      />
      <HistoryLinks path={path} slug={entry.slug} revision={entry.revision} />
    </Section>
  )
}

/** The ways from an entry's page to its versions, and to say something about it. */
function HistoryLinks({ path, slug, revision }: { path: EntryPath; slug: string; revision: number }) {
  const t = words('review')
  return (
    <p className="facts-line screen-only">
      <a href={versionsPath(slug)}>{t('entry.versions')}</a>
      <a href={citePath(slug, revision)}>{t('entry.cite')}</a>
      {path === 'recipes' && <a href={`/entries/${slug}/adaptations`}>{t('versions.adaptations')}</a>}
      {path === 'cases' && <a href={`/due?case=${slug}`}>{t('due.link')}</a>}
      <a href={`/entries/${slug}/dispute`}>{t('entry.dispute')}</a>
    </p>
  )
}
