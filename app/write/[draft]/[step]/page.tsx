import type { Metadata } from 'next'
import { ownDraft } from '#lib/db/drafts.ts'
import { enter } from '../../../_http/actor.ts'
import { NotYours } from '../../../_ui/not-yours.tsx'
import { Notice } from '../../../_ui/notice.tsx'
import { PageHead } from '../../../_ui/page-head.tsx'
import { addressWith, first, type Query } from '../../../_ui/query.ts'
import { Told } from '../../../_ui/told.tsx'
import { words } from '../../../_words/index.ts'
import { FaultList } from '../../../_write/fault-list.tsx'
import { itemLabel } from '../../../_write/labels.ts'
import { LAYOUTS } from '../../../_write/layout.ts'
import { ReturnedNotice } from '../../../_write/returned-notice.tsx'
import { StepForm } from '../../../_write/step-form.tsx'
import { StepNav, type StepWord, stepTitle } from '../../../_write/step-nav.tsx'
import { viewOf } from '../../../_write/view.ts'
import { CheckStep } from './check-step.tsx'
import { DraftHead } from './draft-head.tsx'
import { PhotoStep } from './photo-step.tsx'
import { StepNotes } from './step-notes.tsx'
import '../../../_write/write.css'
import { redirect } from '../../../_http/redirect.ts'

interface Props {
  params: Promise<{ draft: string; step: string }>
  searchParams: Promise<Query>
}

const t = words('write')

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const { step } = await params
  const known = Object.values(LAYOUTS).some((steps) => steps.some(({ id }) => id === step))
  return { title: known ? stepTitle(step) : t('begin.title'), robots: { index: false } }
}

/** One step of a draft's form. */
export default async function StepPage({ params, searchParams }: Props) {
  const { draft: id, step } = await params
  const query = await searchParams
  const more = first(query.more)
  const member = await enter('/write/[draft]/[step]', addressWith(`/write/${id}/${step}`, { more }))
  if (!member) return <NotYours />
  const draft = await ownDraft(member.key, id)
  if (draft === null) redirect('/write?gone=1')
  const steps = LAYOUTS[draft.kind]
  const at = steps.findIndex((one) => one.id === step)
  if (draft.submittedRevisionId !== null || at < 0) redirect(`/write/${id}`)
  const all = first(query.look) === 'all'
  const view = await viewOf(draft, all)
  const refusal = first(query.refused)
  const mending = view.faults.filter((fault) => fault.step === step && (all || !fault.missing))
  const shown = query.look !== undefined && step !== 'check' ? mending : []
  return (
    <>
      <PageHead
        title={stepTitle(step)}
        kicker={<DraftHead view={view} number={at + 1} count={steps.length} />}
        lead={t(`step.${step as StepWord}.lead`)}
      >
        {refusal !== undefined && (
          <Notice kind="caution">
            <p>{refusal}</p>
          </Notice>
        )}
        {draft.held !== null && (
          <Notice kind="caution" id="waiting">
            <p>{t('both.notice')}</p>
            <p>
              <a href={addressWith(`/write/${id}/both`, { step })}>{t('both.see')}</a>
            </p>
          </Notice>
        )}
        {view.returned !== null && <ReturnedNotice returned={view.returned} draft={id} />}
        <FaultList faults={shown.map(({ name, sentence }) => ({ href: `#field-${name}`, sentence }))} />
      </PageHead>
      <div className="write">
        <StepNav view={view} step={step} />
        <Removed item={first(query.removed) ?? ''} version={draft.version} />
        {step === 'check' ? (
          <CheckStep view={view} member={member} look={all} />
        ) : step === 'photos' ? (
          <PhotoStep view={view} query={query} />
        ) : (
          <StepForm view={view} step={step} more={more} before={<StepNotes view={view} step={step} />} />
        )}
      </div>
    </>
  )
}

/** Says what was taken out of a list, by its place there. */
function Removed({ item, version }: { item: string; version: number }) {
  const [, list = '', number] = /^([\w.]{1,80})\.([1-9]\d{0,2})$/.exec(item) ?? []
  const label = itemLabel(list, Number(number))
  // Words for anything else were never on the page.
  if (label === number || number === undefined) return null
  return (
    <Told key={version}>{t(list === 'photos' ? 'photos.removed' : 'form.removed', { item: label })}</Told>
  )
}
