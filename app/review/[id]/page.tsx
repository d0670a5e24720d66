import type { Metadata } from 'next'
import { may } from '#lib/access/policy.ts'
import { writersOf } from '#lib/db/authors.ts'
import { revisionOnDesk } from '#lib/db/review.ts'
import { standingBody } from '#lib/db/revisions.ts'
import { entryHead, versionOf } from '#lib/db/versions.ts'
import { readBody } from '#lib/entry/body.ts'
import { diffBodies } from '#lib/entry/diff.ts'
import { isErased } from '#lib/entry/erased.ts'
import { needsTwoReaders } from '#lib/entry/two-readers.ts'
import { enter } from '../../_http/actor.ts'
import { namesOf } from '../../_ui/author.ts'
import { Facts } from '../../_ui/facts.tsx'
import { InventedNotice } from '../../_ui/invented.tsx'
import { labelOf } from '../../_ui/label.ts'
import { NotHere } from '../../_ui/not-here.tsx'
import { NotYours } from '../../_ui/not-yours.tsx'
import { Notice } from '../../_ui/notice.tsx'
import { PageHead } from '../../_ui/page-head.tsx'
import { Section } from '../../_ui/section.tsx'
import { Written } from '../../_ui/written.tsx'
import { comparePath, homeOf, versionsPath } from '../../_versions/address.ts'
import { ChangeList } from '../../_versions/changes.tsx'
import { DeedList } from '../../_versions/deeds.tsx'
import { shownIn } from '../../_versions/shown.ts'
import { formatDate } from '../../_words/format.ts'
import { words } from '../../_words/index.ts'
import { findingsFor } from '../findings.tsx'
import { Hold } from '../hold.tsx'
import { JudgeForm } from '../judge-form.tsx'

const t = words('review')

export const generateMetadata = (): Metadata => ({ title: t('item.title'), robots: { index: false } })

/** One revision on the desk: what changed, what a machine points at, what was said, and the verdict. */
export default async function ItemPage({ params }: { params: Promise<{ id: string }> }) {
  const { id } = await params
  const member = await enter('/review/[id]', `/review/${id}`)
  if (member === null) return <NotYours />
  const item = await revisionOnDesk(id)
  const entry = item && (await entryHead(member, item.slug))
  const version = entry && (await versionOf(member, entry, item.number))
  if (!item || !entry || !version || isErased(item.body)) return <NotHere />
  const { kind, slug, number } = item
  const body = readBody(kind, item.body, item.shape)
  const from = item.before && !isErased(item.before.body) ? item.before : null
  const before = from === null ? undefined : readBody(kind, from.body, from.shape)
  const changes = diffBodies(before, body)
  const [findings, writers, standing, shown, earlier] = await Promise.all([
    findingsFor({ kind, body, entryId: item.entryId, authorKey: version.authorKey }),
    writersOf(item.entryId),
    standingBody(kind, item.entryId),
    shownIn(kind, [before, body]),
    from === null ? null : versionOf(member, entry, from.number),
  ])
  const returned = earlier?.deeds.filter(({ outcome }) => outcome === 'return') ?? []
  const deeds = [...returned, ...version.deeds]
  const nameOf = await namesOf([
    version.authorKey,
    ...(item.heldBy ? [item.heldBy] : []),
    ...deeds.map(({ byKey }) => byKey),
  ])
  const waits = item.state === 'submitted' && !entry.withdrawn
  const approved = version.deeds.some(({ outcome, byKey }) => outcome === 'approve' && byKey === member.key)
  const judges = may(member, 'decide', { authorKeys: writers }) && !approved
  return (
    <>
      <PageHead
        title={<Written>{entry.title}</Written>}
        kicker={<a href="/review">{t('desk.title')}</a>}
        lead={version.note ?? undefined}
      >
        {body.invented && <InventedNotice page="one" />}
        <Facts
          facts={{
            [t('item.kind')]: labelOf('kinds', kind),
            [t('item.number')]: number,
            [t('versions.author')]: nameOf(version.authorKey),
            [t('versions.submitted')]: formatDate(version.submittedAt),
            [t('versions.state')]: t(`state.${version.state}`),
            [t('item.held')]: item.heldBy === null ? null : t('item.heldBy', { who: nameOf(item.heldBy) }),
          }}
        />
        <p className="facts-line">
          <a href={versionsPath(slug)}>{t('versions.all')}</a>
          {item.publishedNumber !== null && (
            <>
              <a href={homeOf(entry)}>{t('item.asPublished')}</a>
              <a href={comparePath(slug, item.publishedNumber, number)}>{t('item.compare')}</a>
            </>
          )}
        </p>
        {needsTwoReaders(kind, body, standing) && waits && (
          <Notice kind="caution" title={t('item.twoTitle')}>
            <p>{t('item.two')}</p>
          </Notice>
        )}
      </PageHead>
      <Section id="findings" title={t('item.findings')} note={t('item.findingsNote')}>
        {findings.length === 0 ? (
          <p>{t('item.noFindings')}</p>
        ) : (
          <ul>
            {findings.map((finding, index) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: findings have no name, and the list is drawn once
              <li key={index}>{finding}</li>
            ))}
          </ul>
        )}
      </Section>
      {deeds.length > 0 && (
        <Section
          id="said"
          title={t('item.said')}
          {...(returned.length > 0 && from !== null && { note: t('item.saidOn', { number: from.number }) })}
        >
          <DeedList kind={kind} deeds={deeds} nameOf={nameOf} />
        </Section>
      )}
      {waits && judges ? (
        <>
          <Hold revisionId={id} heldBy={item.heldBy} until={item.heldUntil} me={member.key} />
          <JudgeForm
            {...{ kind, slug, number, changes, shown }}
            bodies={[before, body]}
            from={from?.number ?? null}
          />
        </>
      ) : (
        <Section
          id="changes"
          title={t('item.changes')}
          note={waits ? t(approved ? 'item.approvedByYou' : 'item.notYours') : t('item.decided')}
        >
          <ChangeList kind={kind} changes={changes} bodies={[before, body]} shown={shown} />
        </Section>
      )}
    </>
  )
}
