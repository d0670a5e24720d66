import { choosesByOutcome } from '#lib/api/evidence-read.ts'
import type { CaseFilter } from '#lib/db/case-filter.ts'
import { Notice } from '../_ui/notice.tsx'
import { words } from '../_words/index.ts'

/** What every figure of this kind must be read with, and more where a filter chooses by outcome. */
export function Honesty({ filters = [], text }: { filters?: readonly CaseFilter[]; text?: string }) {
  const t = words('evidence')
  return (
    <Notice kind="note" title={t('honest.title')}>
      <p>{t('honest.volunteered')}</p>
      <p>{t('honest.counts')}</p>
      {filters.some((filter) => choosesByOutcome(filter, text)) && <p>{t('honest.chosen')}</p>}
    </Notice>
  )
}
