import type { Metadata } from 'next'
import { content } from '#lib/content/index.ts'
import { alternates } from '../_ui/alternates.ts'
import { guideWords } from '../_ui/guide-words.ts'
import { PageHead } from '../_ui/page-head.tsx'
import { words } from '../_words/index.ts'

const t = words('library')

export const generateMetadata = (): Metadata => ({
  title: t('guides.title'),
  alternates: alternates('/guides'),
})

/** The guides in the order they are read. */
export default function GuidesPage() {
  return (
    <>
      <PageHead title={t('guides.title')} lead={t('guides.lead')} />
      <ol className="index">
        {[...content().guides.values()].map((guide) => {
          const { id, order, cautions } = guide
          const { title, summary } = guideWords(guide)
          return (
            <li key={id}>
              <div>
                <h2 className="index-title">
                  <a href={`/guides/${id}`}>{t('guides.numbered', { number: order, title })}</a>
                </h2>
                <p>{summary}</p>
              </div>
              <p className="index-side">{t('guides.cautions', { count: cautions.length })}</p>
            </li>
          )
        })}
      </ol>
    </>
  )
}
