import type { Metadata } from 'next'
import { redirect } from 'next/navigation'
import { ownDraft } from '#lib/db/drafts.ts'
import type { Json } from '#lib/entry/json.ts'
import { enter } from '../../../_http/actor.ts'
import { NotYours } from '../../../_ui/not-yours.tsx'
import { PageHead } from '../../../_ui/page-head.tsx'
import { words } from '../../../_words/index.ts'
import { ChoiceOfText } from '../../../_write/choice-of-text.tsx'
import { labelFor } from '../../../_write/labels.ts'
import { takeOver } from '../../actions.ts'
import { besideNewer, choiceName } from '../../take-over.ts'
import '../../../_write/write.css'

const t = words('write')

export const metadata: Metadata = { title: t('merge.title'), robots: { index: false } }

/** A draft beside a version that came between: what only one changed stands, what both changed is chosen. */
export default async function MergePage({ params }: { params: Promise<{ draft: string }> }) {
  const { draft: id } = await params
  const member = await enter('/write/[draft]/merge', `/write/${id}/merge`)
  if (!member) return <NotYours />
  const draft = await ownDraft(member.key, id)
  if (draft === null) redirect('/write?gone=1')
  const beside = draft.submittedRevisionId === null ? await besideNewer(draft) : null
  if (beside === null) redirect(`/write/${id}`)
  const { number, merged } = beside
  return (
    <>
      <PageHead
        title={t('merge.title')}
        kicker={<a href={`/write/${id}/check`}>{t('both.back')}</a>}
        lead={t('merge.lead', { number: String(number), basedOn: String(draft.basedOn) })}
      >
        <p className="facts-line">
          <a href={`/entries/${draft.slug}/compare?from=${draft.basedOn}&to=${number}`}>
            {t('merge.compare')}
          </a>
        </p>
      </PageHead>
      <form className="write-form" action={takeOver}>
        <input type="hidden" name=":draft" value={id} />
        {merged.conflicts.length === 0 && <p>{t('merge.nothing')}</p>}
        {merged.conflicts.map(({ path, theirs, yours }) => (
          <ChoiceOfText
            key={choiceName(path)}
            name={choiceName(path)}
            label={labelFor(path.join('.'))}
            sides={[
              {
                value: 'theirs',
                label: t('merge.theirs', { number: String(number) }),
                text: plainText(theirs),
              },
              { value: 'yours', label: t('merge.yours'), text: plainText(yours) },
            ]}
          />
        ))}
        <div className="actions">
          <button className="button" type="submit">
            {t('merge.save')}
          </button>
        </div>
      </form>
    </>
  )
}

/** A value of any depth as one line. */
function plainText(value: Json | undefined): string {
  if (value === undefined || value === null) return ''
  if (typeof value === 'boolean') return t(value ? 'yes' : 'no')
  if (typeof value !== 'object') return String(value)
  return Object.values(value as object)
    .map((one) => plainText(one as Json))
    .filter((text) => text !== '')
    .join(', ')
}
