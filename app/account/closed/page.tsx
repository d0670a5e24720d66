import type { Metadata } from 'next'
import { PageHead } from '../../_ui/page-head.tsx'
import { words } from '../../_words/index.ts'

const t = words('account')

export const generateMetadata = (): Metadata => ({ title: t('closed.title'), robots: { index: false } })

/** What is said to somebody who has closed their account. */
export default function Closed() {
  return (
    <PageHead title={t('closed.title')} lead={t('closed.lead')}>
      <p className="facts-line">
        <a href="/">{t('closed.home')}</a>
      </p>
    </PageHead>
  )
}
