import { Notice } from '../../../_ui/notice.tsx'
import { words } from '../../../_words/index.ts'
import { itemsOf } from '../../../_write/read.ts'
import type { FormView } from '../../../_write/view.ts'

const t = words('write')

/** What has to be read before a step is filled: whose addresses stay out, whose hands a structure belongs in. */
export function StepNotes({ view, step }: { view: FormView; step: string }) {
  const structural = itemsOf(view.typed, 'works').some((i) => view.typed[`works.${i}.structural`] === 'yes')
  const harm = step === 'harm' || (step === 'observer' && (view.typed['harm.words'] ?? '') !== '')
  return (
    <>
      {step === 'place' && (
        <Notice kind="note" title={t('address.title')}>
          <p>{t('address.text')}</p>
        </Notice>
      )}
      {(harm || (step === 'work' && structural)) && (
        <Notice kind="caution" title={t('structure.title')}>
          <p>{t('structure.text')}</p>
        </Notice>
      )}
    </>
  )
}
