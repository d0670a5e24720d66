import { labelOf } from '../../../_ui/label.ts'
import { words } from '../../../_words/index.ts'
import type { FormView } from '../../../_write/view.ts'

const t = words('write')

/** What is being written, from what, and which step of it this is. */
export function DraftHead({ view, number, count }: { view: FormView; number: number; count: number }) {
  const { draft, kind, title } = view
  const { slug, basedOn, adaptedFrom } = draft
  return (
    <>
      <a href="/write">{t('begin.drafts')}</a>
      {' · '}
      {t('form.kindOf', {
        kind: labelOf('kinds', kind),
        title: title ?? t('form.untitled'),
      })}
      {slug !== null && basedOn !== null && `, ${t('form.revising', { slug, number: String(basedOn) })}`}
      {adaptedFrom !== null && `, ${t('form.adapting', { ref: adaptedFrom })}`}
      {' · '}
      <span className="nowrap">{t('form.stepOf', { number: String(number), count: String(count) })}</span>
    </>
  )
}
