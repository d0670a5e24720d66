import type { Metadata } from 'next'
import { caseBySlug } from '#lib/db/cases.ts'
import { calendarToken, type Due, remindersOf } from '#lib/db/reminders.ts'
import type { Work } from '#lib/entry/case.ts'
import { lastDayOf } from '#lib/entry/dates.ts'
import { readSettings } from '#lib/env.ts'
import { sendsMail } from '#lib/mail/send-mail.ts'
import { REMIND_YEARS, yearsAfter } from '#lib/workflow/remind.ts'
import { enter } from '../_http/actor.ts'
import { ActionForm } from '../_ui/action-form.tsx'
import { InventedMark } from '../_ui/invented.tsx'
import { NotYours } from '../_ui/not-yours.tsx'
import { PageHead } from '../_ui/page-head.tsx'
import { addressWith, first, type Query, slugOf } from '../_ui/query.ts'
import { Section } from '../_ui/section.tsx'
import { Told } from '../_ui/told.tsx'
import { reviewLabel } from '../_versions/labels.ts'
import { formatDate } from '../_words/format.ts'
import { words } from '../_words/index.ts'
import { addReminder, makeCalendar, removeReminder } from './actions.ts'

const t = words('review')

export const generateMetadata = (): Metadata => ({ title: t('due.title'), robots: { index: false } })

/** Visits that one asked to be reminded of, the form to add one, and the calendar that lists them. */
export default async function DuePage({ searchParams }: { searchParams: Promise<Query> }) {
  const query = await searchParams
  const [slug, work] = [slugOf(query.case), first(query.work)]
  const removed = first(query.removed)
  const member = await enter('/due', addressWith('/due', { case: slug, work }))
  if (member === null) return <NotYours />
  const [reminders, token, found] = await Promise.all([
    remindersOf(member.key),
    calendarToken(member.key),
    slug === undefined ? null : caseBySlug(slug),
  ])
  return (
    <>
      <PageHead title={t('due.title')} lead={t(sendsMail() ? 'due.leadMail' : 'due.lead')} />
      {found && (
        <Section id="add" title={t('due.add', { title: found.body.title })}>
          <AddForm slug={found.slug} works={found.body.works} work={work} />
        </Section>
      )}
      <Section id="list" title={t('due.list')}>
        {removed !== undefined && <Told key={removed}>{t('due.removed')}</Told>}
        {reminders.length === 0 ? <p>{t('due.none')}</p> : <DueList reminders={reminders} />}
      </Section>
      <Section id="calendar" title={t('due.calendar')} note={t('due.calendarNote')}>
        {token !== null && (
          <p>
            <code className="address">{`${readSettings().siteUrl}/due/calendar/${token}`}</code>
          </p>
        )}
        <ActionForm
          id="calendar-form"
          action={makeCalendar}
          send={t(token === null ? 'due.make' : 'due.makeNew')}
          faulty={t('form.faulty')}
          plain
        />
      </Section>
    </>
  )
}

const AddForm = ({
  slug,
  works,
  work,
}: {
  slug: string
  works: readonly Work[]
  work: string | undefined
}) => (
  <ActionForm
    id="remind"
    action={addReminder}
    hidden={{ caseSlug: slug }}
    fields={[
      {
        name: 'work',
        label: reviewLabel('work'),
        kind: 'choice',
        ...(work !== undefined && { value: work }),
        options: works.map(({ id, title }) => ({ value: id, label: title })),
      },
      {
        name: 'when',
        label: reviewLabel('when'),
        kind: 'choice',
        options: [
          ...yearsToCome(works.filter(({ id }) => work === undefined || id === work)).map((years) => ({
            value: years,
            label: t('due.years', { years: Number(years) }),
          })),
          { value: 'date', label: t('due.onDate') },
        ],
      },
      { name: 'on', label: reviewLabel('on'), hint: t('due.onHint'), kind: 'text', maxLength: 10 },
    ]}
    send={t('due.send')}
    faulty={t('form.faulty')}
  />
)

/** Of the usual years after the work, those that are not past for all of these. */
function yearsToCome(works: readonly Work[]) {
  const today = new Date().toISOString().slice(0, 10)
  return REMIND_YEARS.filter((years) =>
    works.some(({ finished }) => yearsAfter(lastDayOf(finished), Number(years)) >= today),
  )
}

const DueList = ({ reminders }: { reminders: readonly Due[] }) => {
  const today = new Date().toISOString().slice(0, 10)
  return (
    <ul className="index">
      {reminders.map(({ id, caseSlug, caseTitle, work, dueOn, seenOn, invented }) => (
        <li key={id}>
          <div>
            <p className="index-title">
              <a href={`/cases/${caseSlug}#work-${work}`}>{caseTitle}</a> {invented && <InventedMark />}
            </p>
            <p>
              {t(seenOn !== null ? 'due.seen' : dueOn <= today ? 'due.now' : 'due.later', {
                date: formatDate(dueOn),
                seen: seenOn === null ? '' : formatDate(seenOn),
              })}
            </p>
            {seenOn === null && (
              <p>
                <a className="touch" href={addressWith('/write/new', { kind: 'visit', of: caseSlug, work })}>
                  {t('due.visit')}
                </a>
              </p>
            )}
          </div>
          <div className="index-side">
            <ActionForm
              id={`remove-${id}`}
              action={removeReminder}
              hidden={{ id }}
              send={t('due.remove')}
              about={`${caseTitle}, ${formatDate(dueOn)}`}
              faulty={t('form.faulty')}
              plain
            />
          </div>
        </li>
      ))}
    </ul>
  )
}
