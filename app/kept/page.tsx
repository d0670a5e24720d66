import type { Metadata } from 'next'
import { currentActor } from '../_http/actor.ts'
import { readerOf } from '../_offline/heads.ts'
import { KeptList } from '../_offline/kept-list.tsx'
import { PageHead } from '../_ui/page-head.tsx'
import { Section } from '../_ui/section.tsx'
import { words } from '../_words/index.ts'
import { BegunList } from '../_write/begun-list.tsx'
import { begunWords } from '../_write/begun-words.ts'

const t = words('offline')

export const generateMetadata = (): Metadata => ({ title: t('title'), robots: { index: false } })

const listWords = () => ({
  noScript: t('noScript'),
  at: t('at', { date: '{date}' }),
  old: t('old'),
  withdrawn: t('withdrawn'),
})

/** What this browser keeps to be read without a signal; it also stands in for a page that is not kept. */
export default async function KeptPage() {
  return (
    <>
      <PageHead title={t('title')} lead={t('lead')} />
      <BegunList reader={readerOf(await currentActor())} words={begunWords()} />
      <Section id="pages" title={t('list')}>
        <KeptList of="pages" words={{ ...listWords(), none: t('none'), drop: t('drop') }} />
      </Section>
      <Section id="forms" title={t('forms.title')}>
        <KeptList of="blanks" words={{ ...listWords(), none: t('forms.none') }} />
      </Section>
    </>
  )
}
