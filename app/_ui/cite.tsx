import { formatDate } from '../_words/format.ts'
import { words } from '../_words/index.ts'
import { Facts } from './facts.tsx'
import { Section } from './section.tsx'

interface Entry {
  readonly slug: string
  readonly revision: number
  readonly author: string
  readonly submittedAt: Date
  readonly publishedAt: Date
  readonly note: string
  readonly digest: string
}

/** A contributor's name as it is shown; the demo's hands say that they are invented. */
export function authorText(key: string): string {
  const t = words('common')
  const demo = /^demo-contributor-([a-z])$/.exec(key)?.[1]
  return demo === undefined ? key : t('author.demo', { letter: demo.toUpperCase() })
}

/** What this page is a revision of, and one line to cite it by. */
export function CiteSection({
  path,
  entry,
  title,
}: {
  path: 'recipes' | 'cases'
  entry: Entry
  title: string
}) {
  const t = words('pages')
  const address = `/${path}/${entry.slug}?revision=${entry.revision}`
  return (
    <Section id="cite" title={t('cite.title')} note={t('cite.sectionNote')}>
      <p>
        {t.rich('cite.line', {
          author: authorText(entry.author),
          year: entry.publishedAt.toISOString().slice(0, 4),
          title,
          revision: entry.revision,
          address,
          name: (text) => <cite>{text}</cite>,
          link: (text) => <a href={address}>{text}</a>,
        })}
      </p>
      <Facts
        facts={{
          [t('cite.revision')]: t('cite.revisionOn', {
            revision: entry.revision,
            date: formatDate(entry.publishedAt),
          }),
          [t('cite.author')]: authorText(entry.author),
          [t('cite.note')]: entry.note,
          [t('cite.digest')]: <code>{entry.digest}</code>,
        }}
      />
    </Section>
  )
}
