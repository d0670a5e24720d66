import type { Metadata } from 'next'
import { entryHead, readableVersions, versionBefore, versionOf } from '#lib/db/versions.ts'
import { readBody } from '#lib/entry/body.ts'
import { diffBodies } from '#lib/entry/diff.ts'
import { currentActor } from '../../../../_http/actor.ts'
import { namesOf } from '../../../../_ui/author.ts'
import { Facts } from '../../../../_ui/facts.tsx'
import { InventedNotice } from '../../../../_ui/invented.tsx'
import { NOT_HERE, NotHere } from '../../../../_ui/not-here.tsx'
import { wholeNumber } from '../../../../_ui/query.ts'
import { Section } from '../../../../_ui/section.tsx'
import { Written } from '../../../../_ui/written.tsx'
import { citePath, comparePath, homeOf } from '../../../../_versions/address.ts'
import { ChangeList } from '../../../../_versions/changes.tsx'
import { DeedList } from '../../../../_versions/deeds.tsx'
import { shownIn } from '../../../../_versions/shown.ts'
import { formatDate } from '../../../../_words/format.ts'
import { words } from '../../../../_words/index.ts'
import { VersionsHead } from '../../head.tsx'

interface Props {
  params: Promise<{ slug: string; number: string }>
}

const t = words('review')

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const { slug, number } = await params
  const entry = await entryHead(await currentActor(), slug)
  if (entry === null) return NOT_HERE
  return { title: t('version.titleOf', { number, title: entry.title }), robots: { index: false } }
}

/** One version as it was submitted, field by field, at an address that stays. */
export default async function VersionPage({ params }: Props) {
  const { slug, number } = await params
  const actor = await currentActor()
  const entry = await entryHead(actor, slug)
  const version = entry && (await versionOf(actor, entry, wholeNumber(number) ?? 0))
  if (!version) return <NotHere />
  const [nameOf, readable] = await Promise.all([
    namesOf([version.authorKey, ...version.deeds.map(({ byKey }) => byKey)]),
    readableVersions(actor, entry),
  ])
  const before = versionBefore(readable, version.number)
  const body = version.body === null ? null : readBody(entry.kind, version.body, version.shape)
  return (
    <>
      <VersionsHead entry={entry} title={t('versions.number', { number: version.number })}>
        {body?.invented === true && <InventedNotice page="one" />}
        <Facts
          facts={{
            [t('versions.state')]: t(`state.${version.state}`),
            [t('versions.author')]: nameOf(version.authorKey),
            [t('versions.submitted')]: formatDate(version.submittedAt),
            [t('versions.what')]: version.note && <Written>{version.note}</Written>,
            [t('versions.digest')]: <code>{version.digest}</code>,
          }}
        />
        <p className="facts-line">
          {body !== null && before !== undefined && (
            <a href={comparePath(slug, before, version.number)}>{t('compare.before')}</a>
          )}
          {body !== null && <a href={citePath(slug, version.number)}>{t('versions.cite')}</a>}
          {entry.published === version.number && <a href={homeOf(entry)}>{t('version.asRead')}</a>}
        </p>
      </VersionsHead>
      <Section id="fields" title={t('version.fields')}>
        {body === null ? (
          <p>{t(version.erased ? 'versions.erased' : 'versions.closed')}</p>
        ) : (
          <ChangeList
            kind={entry.kind}
            changes={diffBodies(undefined, body)}
            bodies={[undefined, body]}
            shown={await shownIn(entry.kind, [body])}
          />
        )}
      </Section>
      <Section id="decisions" title={t('version.decisions')}>
        {version.deeds.length > 0 ? (
          <DeedList kind={entry.kind} deeds={version.deeds} nameOf={nameOf} />
        ) : (
          <p>{t('versions.waits')}</p>
        )}
      </Section>
    </>
  )
}
