import type { ReactNode } from 'react'
import type { EntryHead } from '#lib/db/versions.ts'
import { Notice } from '../../_ui/notice.tsx'
import { PageHead } from '../../_ui/page-head.tsx'
import { Written } from '../../_ui/written.tsx'
import { homeOf, versionsPath } from '../../_versions/address.ts'
import { words } from '../../_words/index.ts'

/** The head of every page about an entry's versions: what it is about, and the way back to it. */
export function VersionsHead(props: {
  entry: EntryHead
  title: string
  lead?: ReactNode
  here?: 'versions'
  children?: ReactNode
}) {
  const { entry, title, lead, here } = props
  const t = words('review')
  const readable = entry.published !== null
  return (
    <PageHead
      title={title}
      kicker={<Written>{readable ? <a href={homeOf(entry)}>{entry.title}</a> : entry.title}</Written>}
      {...(lead !== undefined && { lead })}
    >
      {here !== 'versions' && (
        <p className="facts-line">
          <a href={versionsPath(entry.slug)}>{t('versions.all')}</a>
        </p>
      )}
      {entry.withdrawn && (
        <Notice kind="withdrawn">
          <p>{t('versions.withdrawn')}</p>
        </Notice>
      )}
      {entry.disputed && !entry.withdrawn && (
        <Notice kind="caution" title={t('disputed.title')}>
          <p>{t('disputed.lead')}</p>
        </Notice>
      )}
      {props.children}
    </PageHead>
  )
}
