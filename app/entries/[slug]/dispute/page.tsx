import type { Metadata } from 'next'
import { v7 } from 'uuid'
import { may } from '#lib/access/policy.ts'
import { entryHead } from '#lib/db/versions.ts'
import { enter } from '../../../_http/actor.ts'
import { ActionForm } from '../../../_ui/action-form.tsx'
import { NotHere } from '../../../_ui/not-here.tsx'
import { NotYours } from '../../../_ui/not-yours.tsx'
import { Notice } from '../../../_ui/notice.tsx'
import { reviewLabel } from '../../../_versions/labels.ts'
import { words } from '../../../_words/index.ts'
import { disputeEntry } from '../../actions.ts'
import { VersionsHead } from '../head.tsx'

const t = words('review')

export const generateMetadata = (): Metadata => ({ title: t('dispute.title'), robots: { index: false } })

/** Where anybody with an account says that an entry is wrong, and why. */
export default async function DisputePage({ params }: { params: Promise<{ slug: string }> }) {
  const { slug } = await params
  const member = await enter('/entries/[slug]/dispute', `/entries/${slug}/dispute`)
  if (member === null) return <NotYours />
  const entry = await entryHead(member, slug)
  if (entry === null || entry.published === null) return <NotHere />
  return (
    <VersionsHead entry={entry} title={t('dispute.title')} lead={t('dispute.lead')}>
      {may(member, 'dispute', undefined) ? (
        <ActionForm
          id="dispute"
          action={disputeEntry}
          hidden={{ key: v7(), slug }}
          fields={[
            {
              name: 'words',
              label: reviewLabel('words'),
              hint: t('dispute.hint'),
              kind: 'long',
              required: true,
              maxLength: 2000,
            },
          ]}
          send={t('dispute.send')}
          faulty={t('form.faulty')}
        />
      ) : (
        <Notice kind="note">
          <p>{t('dispute.unconfirmed')}</p>
        </Notice>
      )}
    </VersionsHead>
  )
}
