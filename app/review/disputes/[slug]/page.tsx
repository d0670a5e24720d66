import type { Metadata } from 'next'
import { v7 } from 'uuid'
import { may } from '#lib/access/policy.ts'
import { writersOf } from '#lib/db/authors.ts'
import { openDisputes } from '#lib/db/disputes.ts'
import { entryHead } from '#lib/db/versions.ts'
import { enter } from '../../../_http/actor.ts'
import { ActionForm } from '../../../_ui/action-form.tsx'
import { namesOf } from '../../../_ui/author.ts'
import { NotHere } from '../../../_ui/not-here.tsx'
import { NotYours } from '../../../_ui/not-yours.tsx'
import { PageHead } from '../../../_ui/page-head.tsx'
import { Section } from '../../../_ui/section.tsx'
import { homeOf, versionsPath } from '../../../_versions/address.ts'
import { reviewLabel } from '../../../_versions/labels.ts'
import { formatDate } from '../../../_words/format.ts'
import { words } from '../../../_words/index.ts'
import { ruleOnDispute } from '../../actions.ts'

const t = words('review')

export const generateMetadata = (): Metadata => ({ title: t('rule.title'), robots: { index: false } })

/** The disputes of one entry that wait for an answer. */
export default async function DisputesPage({ params }: { params: Promise<{ slug: string }> }) {
  const { slug } = await params
  const member = await enter('/review/disputes/[slug]', `/review/disputes/${slug}`)
  if (member === null) return <NotYours />
  const entry = await entryHead(member, slug)
  if (entry === null) return <NotHere />
  const open = await openDisputes(entry.entryId)
  const nameOf = await namesOf(open.map(({ byKey }) => byKey))
  const authorKeys = await writersOf(entry.entryId)
  const subject = { authorKeys, disputerKeys: open.map(({ byKey }) => byKey) }
  const last = open.at(-1)
  return (
    <>
      <PageHead title={entry.title} kicker={<a href="/review">{t('desk.title')}</a>} lead={t('rule.lead')}>
        <p className="facts-line">
          <a href={homeOf(entry)}>{t('item.asPublished')}</a>
          <a href={versionsPath(slug)}>{t('versions.all')}</a>
        </p>
      </PageHead>
      <Section id="disputes" title={t('rule.title')}>
        {open.length === 0 && <p>{t('desk.noDispute')}</p>}
        <ol className="deeds">
          {open.map(({ number, byKey, words: said, at }) => (
            <li key={number}>
              <p className="note">{t('deed.by', { who: nameOf(byKey), date: formatDate(at) })}</p>
              <p>{said}</p>
            </li>
          ))}
        </ol>
      </Section>
      {last !== undefined && entry.published !== null && (
        <Section id="rule" title={t('rule.answer')}>
          {may(member, 'settle', subject) ? (
            <ActionForm
              id="rule"
              action={ruleOnDispute}
              hidden={{ key: v7(), slug, read: String(last.number) }}
              fields={[
                {
                  name: 'outcome',
                  label: reviewLabel('outcome'),
                  kind: 'choice',
                  options: (['settle', 'uphold'] as const).map((outcome) => ({
                    value: outcome,
                    label: t(`rule.${outcome}`),
                  })),
                },
                { name: 'words', label: reviewLabel('words'), kind: 'long', required: true, maxLength: 2000 },
              ]}
              send={t('rule.send')}
              faulty={t('form.faulty')}
            />
          ) : (
            <p>{t('item.notYours')}</p>
          )}
        </Section>
      )}
    </>
  )
}
