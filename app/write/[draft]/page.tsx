import type { Metadata } from 'next'
import { ownDraft, sentAs } from '#lib/db/drafts.ts'
import { enter } from '../../_http/actor.ts'
import { redirect } from '../../_http/redirect.ts'
import { labelOf } from '../../_ui/label.ts'
import { NotYours } from '../../_ui/not-yours.tsx'
import { PageHead } from '../../_ui/page-head.tsx'
import { addressWith } from '../../_ui/query.ts'
import { words } from '../../_words/index.ts'
import { keepWords } from '../../_write/keep-words.ts'
import { KeptHere } from '../../_write/kept-here.tsx'
import { LAYOUTS } from '../../_write/layout.ts'
import { returnedOf } from '../../_write/returned.ts'
import { ReturnedNotice } from '../../_write/returned-notice.tsx'
import { viewOf } from '../../_write/view.ts'
import { LateText } from './late-text.tsx'
import '../../_write/write.css'

const t = words('write')

export const generateMetadata = (): Metadata => ({ title: t('begin.title'), robots: { index: false } })

/** A draft's own address: the step where something is still needed; once it was sent, what became of it. */
export default async function DraftPage({ params }: { params: Promise<{ draft: string }> }) {
  const { draft: id } = await params
  const member = await enter('/write/[draft]', `/write/${id}`)
  if (!member) return <NotYours />
  const draft = await ownDraft(member.key, id)
  if (draft === null) redirect('/write?gone=1')
  const sent = draft.submittedRevisionId === null ? null : await sentAs(draft.submittedRevisionId)
  if (sent === null) {
    const { faults, kind, returned } = await viewOf(draft)
    const step = LAYOUTS[kind].find(
      (one) => one.needed && one.id !== 'check' && faults.some((fault) => fault.step === one.id),
    )
    // A whole one that came back is corrected first where a reviewer asked something. What the last step asks for is
    // asked anew of every version.
    redirect(`/write/${id}/${step?.id ?? returned?.fields[0]?.step ?? 'check'}`)
  }
  const { slug, number, state } = sent
  const returned = await returnedOf(draft.kind, slug, number)
  return (
    <>
      <PageHead
        title={t(returned === null ? 'sent.title' : 'sent.cameBack')}
        kicker={<a href="/write">{t('sent.back')}</a>}
        lead={t(returned === null ? 'sent.lead' : 'sent.leadBack', {
          kind: labelOf('kinds', draft.kind).toLowerCase(),
          number: String(number),
        })}
      >
        {returned === null ? (
          <p>{t('begin.sent', { slug, number: String(number), state: t(`state.${state}`) })}</p>
        ) : (
          <>
            <ReturnedNotice returned={returned} draft={null} />
            <p className="actions">
              <a className="button" href={addressWith('/write/new', { from: `${slug}@${number}` })}>
                {t('sent.correct')}
              </a>
            </p>
          </>
        )}
        <p className="facts-line">
          <a href={`/entries/${slug}/versions`}>{t('sent.versions')}</a>
        </p>
        <KeptHere draft={id} step="check" kept={draft.typed} words={keepWords()} />
      </PageHead>
      <LateText draft={draft} />
    </>
  )
}
