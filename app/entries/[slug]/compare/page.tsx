import type { Metadata } from 'next'
import { entryHead, versionOf } from '#lib/db/versions.ts'
import { readBody } from '#lib/entry/body.ts'
import { diffBodies } from '#lib/entry/diff.ts'
import { currentActor } from '../../../_http/actor.ts'
import { asWritten } from '../../../_ui/as-written.ts'
import { namesOf } from '../../../_ui/author.ts'
import { NOT_HERE, NotHere } from '../../../_ui/not-here.tsx'
import { type Query, wholeNumber } from '../../../_ui/query.ts'
import { Section } from '../../../_ui/section.tsx'
import { comparePath, versionPath } from '../../../_versions/address.ts'
import { ChangeList } from '../../../_versions/changes.tsx'
import { shownIn } from '../../../_versions/shown.ts'
import { formatDate } from '../../../_words/format.ts'
import { words } from '../../../_words/index.ts'
import { VersionsHead } from '../head.tsx'

interface Props {
  params: Promise<{ slug: string }>
  searchParams: Promise<Query>
}

const t = words('review')

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const entry = await entryHead(await currentActor(), (await params).slug)
  if (entry === null) return NOT_HERE
  return { title: t('compare.titleOf', { title: entry.title }), robots: { index: false } }
}

/** Two versions of an entry, field by field. */
export default async function ComparePage({ params, searchParams }: Props) {
  const { slug } = await params
  const actor = await currentActor()
  const entry = await entryHead(actor, slug)
  if (entry === null) return <NotHere />
  const query = await searchParams
  const to = wholeNumber(query.to) ?? entry.published ?? entry.latest
  const from = wholeNumber(query.from) ?? Math.max(1, to - 1)
  const [before, after] = await Promise.all([versionOf(actor, entry, from), versionOf(actor, entry, to)])
  if (before === null || after === null) return <NotHere />
  const [old, now] = [before, after].map(({ body, shape }) =>
    body === null ? null : readBody(entry.kind, body, shape),
  )
  const [nameOf, shown] = await Promise.all([
    namesOf([before.authorKey, after.authorKey]),
    shownIn(entry.kind, [old, now]),
  ])
  const changes = old && now ? diffBodies(old, now) : []
  return (
    <>
      <VersionsHead entry={entry} title={t('compare.title', { from, to })}>
        <ul className="plain-list">
          {[before, after].map((version) => (
            <li key={version.number}>
              {t.rich('compare.version', {
                number: version.number,
                who: nameOf(version.authorKey),
                date: formatDate(version.submittedAt),
                link: (label) => <a href={versionPath(slug, version.number)}>{label}</a>,
              })}
              {version.note !== null && (
                <span className="note block" {...asWritten()}>
                  {version.note}
                </span>
              )}
            </li>
          ))}
        </ul>
        <p className="facts-line">
          <a href={comparePath(slug, to, from)}>{t('compare.otherWay')}</a>
        </p>
      </VersionsHead>
      <Section id="changes" title={t('compare.changes')} note={t('compare.count', { count: changes.length })}>
        {!old || !now ? (
          <p>{t('compare.closed')}</p>
        ) : changes.length === 0 ? (
          <p>{t('compare.none')}</p>
        ) : (
          <ChangeList kind={entry.kind} changes={changes} bodies={[old, now]} shown={shown} />
        )}
      </Section>
    </>
  )
}
