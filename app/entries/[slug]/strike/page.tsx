import type { Metadata } from 'next'
import { v7 } from 'uuid'
import { entryHead } from '#lib/db/versions.ts'
import { enter } from '../../../_http/actor.ts'
import { ActionForm } from '../../../_ui/action-form.tsx'
import { NotHere } from '../../../_ui/not-here.tsx'
import { NotYours } from '../../../_ui/not-yours.tsx'
import { type Query, wholeNumber } from '../../../_ui/query.ts'
import { reviewLabel } from '../../../_versions/labels.ts'
import { words } from '../../../_words/index.ts'
import { strike } from '../../actions.ts'
import { VersionsHead } from '../head.tsx'

interface Props {
  params: Promise<{ slug: string }>
  searchParams: Promise<Query>
}

const t = words('review')

export const generateMetadata = (): Metadata => ({ title: t('strike.title'), robots: { index: false } })

/** Where a steward takes the words of a dispute or an answer off the page. */
export default async function StrikePage({ params, searchParams }: Props) {
  const { slug } = await params
  const deed = wholeNumber((await searchParams).deed)
  const member = await enter('/entries/[slug]/strike', `/entries/${slug}/strike?deed=${deed ?? ''}`)
  if (member === null) return <NotYours />
  const entry = await entryHead(member, slug)
  if (entry === null || deed === undefined) return <NotHere />
  return (
    <VersionsHead entry={entry} title={t('strike.title')} lead={t('strike.lead', { deed })}>
      <ActionForm
        id="strike"
        action={strike}
        hidden={{ key: v7(), slug, deed: String(deed) }}
        fields={[
          { name: 'words', label: reviewLabel('words'), kind: 'long', required: true, maxLength: 600 },
        ]}
        send={t('strike.send')}
        faulty={t('form.faulty')}
      />
    </VersionsHead>
  )
}
