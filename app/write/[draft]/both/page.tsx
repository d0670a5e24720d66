import type { Metadata } from 'next'
import { redirect } from 'next/navigation'
import { ownDraft } from '#lib/db/drafts.ts'
import { enter } from '../../../_http/actor.ts'
import { NotYours } from '../../../_ui/not-yours.tsx'
import { PageHead } from '../../../_ui/page-head.tsx'
import { words } from '../../../_words/index.ts'
import { ChoiceOfText } from '../../../_write/choice-of-text.tsx'
import { fullLabel } from '../../../_write/labels.ts'
import { itemsOf } from '../../../_write/read.ts'
import { settleBoth } from '../../actions.ts'
import '../../../_write/write.css'

const t = words('write')

export const metadata: Metadata = { title: t('both.title'), robots: { index: false } }

/** Text that could not be put in without overwriting, beside what stands in its field. */
export default async function BothPage({ params }: { params: Promise<{ draft: string }> }) {
  const { draft: id } = await params
  const member = await enter('/write/[draft]/both', `/write/${id}/both`)
  if (!member) return <NotYours />
  const draft = await ownDraft(member.key, id)
  if (draft === null) redirect('/write?gone=1')
  const held = Object.entries(draft.held ?? {})
  if (held.length === 0) redirect(`/write/${id}`)
  const number = (list: string, index: number) => Math.max(0, itemsOf(draft.typed, list).indexOf(index)) + 1
  return (
    <>
      <PageHead
        title={t('both.title')}
        kicker={<a href={`/write/${id}/check`}>{t('both.back')}</a>}
        lead={t('both.lead')}
      />
      <form className="write-form" action={settleBoth}>
        <input type="hidden" name=":draft" value={id} />
        {held.map(([name, texts]) => (
          <ChoiceOfText
            key={name}
            name={name}
            label={fullLabel(name, number)}
            sides={[
              { value: 'stands', label: t('both.stands'), text: draft.typed[name] ?? '' },
              ...texts.map((text, at) => ({ value: String(at), label: t('both.held'), text })),
            ]}
          />
        ))}
        <div className="actions">
          <button className="button" type="submit">
            {t('both.save')}
          </button>
        </div>
      </form>
    </>
  )
}
