import type { Metadata } from 'next'
import { type NoticeLine, noticesFor, unreadNotices } from '#lib/db/notices.ts'
import { enter } from '../_http/actor.ts'
import { ActionForm } from '../_ui/action-form.tsx'
import { backToStart, NextPage } from '../_ui/next-page.tsx'
import { NotYours } from '../_ui/not-yours.tsx'
import { PageHead } from '../_ui/page-head.tsx'
import { first, type Query } from '../_ui/query.ts'
import { Section } from '../_ui/section.tsx'
import { versionsPath } from '../_versions/address.ts'
import { formatDate } from '../_words/format.ts'
import { words } from '../_words/index.ts'
import { readNotices } from '../due/actions.ts'

const t = words('review')

export const generateMetadata = (): Metadata => ({ title: t('notices.title'), robots: { index: false } })

/** What became of one's own work, and what others said beside it. */
export default async function NoticesPage({ searchParams }: { searchParams: Promise<Query> }) {
  const after = first((await searchParams).after)
  const member = await enter('/notices', '/notices')
  if (member === null) return <NotYours />
  const [{ notices, next }, unread] = await Promise.all([
    noticesFor(member.key, { after }).catch(backToStart('/notices')),
    unreadNotices(member.key),
  ])
  return (
    <>
      <PageHead title={t('notices.title')} lead={t('notices.lead', { count: unread })}>
        {unread > 0 && (
          <ActionForm
            id="read"
            action={readNotices}
            send={t('notices.read')}
            faulty={t('form.faulty')}
            plain
          />
        )}
      </PageHead>
      <Section id="list" title={t('notices.list')}>
        {notices.length === 0 ? (
          <p>{t('notices.none')}</p>
        ) : (
          <ul className="index">
            {notices.map((notice) => (
              <NoticeItem key={notice.id} notice={notice} />
            ))}
          </ul>
        )}
        <NextPage path="/notices" choices={{}} after={after} next={next} />
      </Section>
    </>
  )
}

function NoticeItem({ notice }: { notice: NoticeLine }) {
  const { what, slug, title, number, at, isRead } = notice
  return (
    <li>
      <div>
        <p className="index-title">
          <a href={versionsPath(slug)}>{title}</a>
        </p>
        <p>{t(`notice.${what}`)}</p>
        {(what === 'returned' || what === 'declined') && (
          <a className="touch" href={`/write/new?from=${slug}@${number}`}>
            {t('notices.correct')}
          </a>
        )}
        {what === 'visited' && (
          <a className="touch" href={`/entries/${slug}/answer`}>
            {t('answer.link')}
          </a>
        )}
      </div>
      <p className="index-side">
        {formatDate(at)}
        {!isRead && <span className="block">{t('notices.new')}</span>}
      </p>
    </li>
  )
}
