import type { Metadata } from 'next'
import { v7 } from 'uuid'
import { may } from '#lib/access/policy.ts'
import { partiesTo } from '#lib/db/authors.ts'
import { entryHead } from '#lib/db/versions.ts'
import { enter } from '../../../_http/actor.ts'
import { ActionForm } from '../../../_ui/action-form.tsx'
import { NotHere } from '../../../_ui/not-here.tsx'
import { NotYours } from '../../../_ui/not-yours.tsx'
import { reviewLabel } from '../../../_versions/labels.ts'
import { words } from '../../../_words/index.ts'
import { answerVisit } from '../../actions.ts'
import { VersionsHead } from '../head.tsx'

const t = words('review')

export const generateMetadata = (): Metadata => ({ title: t('answer.title'), robots: { index: false } })

/** Where the author of a case answers beside somebody's visit to it. */
export default async function AnswerPage({ params }: { params: Promise<{ slug: string }> }) {
  const { slug } = await params
  const member = await enter('/entries/[slug]/answer', `/entries/${slug}/answer`)
  if (member === null) return <NotYours />
  const visit = await entryHead(member, slug)
  if (visit?.caseSlug == null || visit.published === null) return <NotHere />
  const { entryId, caseSlug } = visit
  if (!may(member, 'answer', await partiesTo({ entryId, caseSlug }))) return <NotYours />
  return (
    <VersionsHead entry={visit} title={t('answer.title')} lead={t('answer.lead')}>
      <ActionForm
        id="answer"
        action={answerVisit}
        hidden={{ key: v7(), slug }}
        fields={[
          { name: 'words', label: reviewLabel('words'), kind: 'long', required: true, maxLength: 1200 },
        ]}
        send={t('answer.send')}
        faulty={t('form.faulty')}
      />
    </VersionsHead>
  )
}
