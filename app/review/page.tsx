import type { Metadata } from 'next'
import { disputedNow, type Waiting, waitingRevisions } from '#lib/db/review.ts'
import { KINDS } from '#lib/entry/terms.ts'
import { enter } from '../_http/actor.ts'
import { type NameOf, namesOf } from '../_ui/author.ts'
import { SelectField } from '../_ui/field.tsx'
import { labelOf } from '../_ui/label.ts'
import { ListForm } from '../_ui/list-form.tsx'
import { backToStart, NextPage } from '../_ui/next-page.tsx'
import { NotYours } from '../_ui/not-yours.tsx'
import { PageHead } from '../_ui/page-head.tsx'
import { addressWith, first, oneOf, type Query } from '../_ui/query.ts'
import { Section } from '../_ui/section.tsx'
import { formatDate } from '../_words/format.ts'
import { words } from '../_words/index.ts'

const t = words('review')

export const generateMetadata = (): Metadata => ({ title: t('desk.title'), robots: { index: false } })

/** What waits for a reviewer, oldest first, and what is disputed. */
export default async function DeskPage({ searchParams }: { searchParams: Promise<Query> }) {
  const query = await searchParams
  const kind = oneOf(KINDS, query.kind)
  const after = first(query.after)
  const member = await enter('/review', addressWith('/review', { kind, after }))
  if (member === null) return <NotYours />
  const [{ waiting, total, next }, disputed] = await Promise.all([
    waitingRevisions({ kind }, { after }).catch(backToStart('/review')),
    disputedNow(),
  ])
  const nameOf = await namesOf(
    waiting.flatMap(({ authorKey, heldBy }) => [authorKey, ...(heldBy ? [heldBy] : [])]),
  )
  return (
    <>
      <PageHead title={t('desk.title')} lead={t('desk.lead')}>
        <ListForm action="/review" send={t('desk.show')}>
          <SelectField
            name="kind"
            label={t('desk.kind')}
            any={t('desk.anyKind')}
            {...(kind !== undefined && { value: kind })}
            options={KINDS.map((one) => ({ value: one, label: labelOf('kinds', one) }))}
          />
        </ListForm>
      </PageHead>
      <Section id="waiting" title={t('desk.waiting')} note={t('desk.count', { count: total })}>
        {waiting.length === 0 ? (
          <p>{t('desk.nothing')}</p>
        ) : (
          <ol className="index">
            {waiting.map((item) => (
              <WaitingItem key={item.revisionId} item={item} nameOf={nameOf} me={member.key} />
            ))}
          </ol>
        )}
        <NextPage path="/review" choices={{ kind }} after={after} next={next} />
      </Section>
      <Section id="disputed" title={t('desk.disputed')} note={t('desk.disputedNote')}>
        {disputed.length === 0 ? (
          <p>{t('desk.noDispute')}</p>
        ) : (
          <ul>
            {disputed.map(({ slug, title, kind: of, since, disputes }) => (
              <li key={slug}>
                <a href={`/review/disputes/${slug}`}>{title === '' ? slug : title}</a>{' '}
                <span className="note">
                  {t('desk.disputedLine', {
                    kind: labelOf('kinds', of),
                    date: formatDate(since),
                    count: disputes,
                  })}
                </span>
              </li>
            ))}
          </ul>
        )}
      </Section>
    </>
  )
}

function WaitingItem({ item, nameOf, me }: { item: Waiting; nameOf: NameOf; me: string }) {
  const { revisionId, kind, slug, number, title, note, authorKey, submittedAt, further, approvals } = item
  return (
    <li>
      <div>
        <p className="index-title">
          <a href={`/review/${revisionId}`}>{title === '' ? slug : title}</a>
        </p>
        <p>{note}</p>
      </div>
      <ul className="plain-list index-side">
        <li>
          {further
            ? t('desk.further', { kind: labelOf('kinds', kind), number })
            : t('desk.first', { kind: labelOf('kinds', kind) })}
        </li>
        <li>{t('desk.by', { who: nameOf(authorKey), date: formatDate(submittedAt) })}</li>
        {approvals > 0 && <li>{t('desk.approved')}</li>}
        {authorKey === me && <li>{t('desk.own')}</li>}
        {item.heldBy !== null && (
          <li>{item.heldBy === me ? t('desk.mine') : t('desk.held', { who: nameOf(item.heldBy) })}</li>
        )}
      </ul>
    </li>
  )
}
