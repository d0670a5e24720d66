import type { Metadata } from 'next'
import { KeptList } from '../_offline/kept-list.tsx'
import { PageHead } from '../_ui/page-head.tsx'
import { Section } from '../_ui/section.tsx'
import { words } from '../_words/index.ts'

const t = words('offline')

export const generateMetadata = (): Metadata => ({ title: t('title'), robots: { index: false } })

/** What this browser keeps to be read without a signal; it also stands in for a page that is not kept. */
export default function KeptPage() {
  return (
    <>
      <PageHead title={t('title')} lead={t('lead')} />
      <Section id="pages" title={t('list')}>
        <KeptList
          words={{
            none: t('none'),
            noScript: t('noScript'),
            at: t('at', { date: '{date}' }),
            old: t('old'),
            withdrawn: t('withdrawn'),
            drop: t('drop'),
          }}
        />
      </Section>
    </>
  )
}
