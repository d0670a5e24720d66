import type { Metadata } from 'next'
import { ownDraft } from '#lib/db/drafts.ts'
import { enter } from '../../../_http/actor.ts'
import { NotYours } from '../../../_ui/not-yours.tsx'
import { Notice } from '../../../_ui/notice.tsx'
import { PageHead } from '../../../_ui/page-head.tsx'
import { addressWith, first, type Query } from '../../../_ui/query.ts'
import { words } from '../../../_words/index.ts'
import { ChoiceOfText, type Side } from '../../../_write/choice-of-text.tsx'
import { fullLabel, numberIn } from '../../../_write/labels.ts'
import { LAYOUTS } from '../../../_write/layout.ts'
import { canJoin, textShown, waitingTexts } from '../../../_write/text-shown.ts'
import { type FormView, viewOf } from '../../../_write/view.ts'
import { settleBoth } from '../../actions.ts'
import { joined } from '../../read-form.ts'
import '../../../_write/write.css'
import { redirect } from '../../../_http/redirect.ts'

const t = words('write')

export const generateMetadata = (): Metadata => ({ title: t('both.title'), robots: { index: false } })

interface Props {
  params: Promise<{ draft: string }>
  searchParams: Promise<Query>
}

/** Text that could not be put in without overwriting, beside what stands in its field. */
export default async function BothPage({ params, searchParams }: Props) {
  const [{ draft: id }, query] = [await params, await searchParams]
  const given = first(query.step)
  const member = await enter('/write/[draft]/both', addressWith(`/write/${id}/both`, { step: given }))
  if (!member) return <NotYours />
  const draft = await ownDraft(member.key, id)
  if (draft === null) redirect('/write?gone=1')
  // What came in for a draft after it was sent stands on its own page.
  if (draft.held === null || draft.submittedRevisionId !== null) redirect(`/write/${id}`)
  const view = await viewOf(draft)
  const step = LAYOUTS[draft.kind].find((one) => one.id === given)?.id ?? 'check'
  const seen = waitingTexts(draft)
  return (
    <>
      <PageHead
        title={t('both.title')}
        kicker={<a href={`/write/${id}/${step}`}>{t('both.back')}</a>}
        lead={t('both.lead')}
      >
        {query.again !== undefined && (
          <Notice kind="caution">
            <p>{t('both.again')}</p>
          </Notice>
        )}
      </PageHead>
      <form className="write-form" action={settleBoth}>
        <input type="hidden" name=":draft" value={id} />
        <input type="hidden" name=":step" value={step} />
        <input type="hidden" name=":seen" value={JSON.stringify(seen)} />
        {Object.entries(seen).map(([name, texts]) => (
          <ChoiceOfText
            key={name}
            name={name}
            label={fullLabel(name, numberIn(draft.typed))}
            sides={sidesOf(view, name, texts)}
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

/** What stands, each text that waits, and where words can follow words, all of them. */
function sidesOf(view: FormView, name: string, [stands = '', ...waiting]: readonly string[]): Side[] {
  const shown = (text: string) => textShown(view, name, text)
  const whole = [stands, ...waiting].filter((text) => text !== '')
  return [
    { value: 'stands', label: t('both.stands'), text: shown(stands) },
    ...waiting.map((text, at) => ({ value: String(at), label: t('both.held'), text: shown(text) })),
    ...(whole.length > 1 && canJoin(view, name)
      ? [{ value: 'all', label: t('both.all'), text: joined(whole) }]
      : []),
  ]
}
