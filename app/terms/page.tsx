import type { Metadata } from 'next'
import { content } from '#lib/content/index.ts'
import { alternates } from '../_ui/alternates.ts'
import { PageHead } from '../_ui/page-head.tsx'
import { said } from '../_ui/said.tsx'
import { words } from '../_words/index.ts'

const t = words('library')

export const generateMetadata = (): Metadata => ({
  title: t('terms.title'),
  alternates: alternates('/terms'),
})

/** The lists of terms that records and recipes choose from. */
export default function TermsPage() {
  const { vocabularies, vocabularyHeads } = content()
  return (
    <>
      <PageHead title={t('terms.title')} lead={t('terms.lead')} />
      <ul className="index">
        {[...vocabularies].map(([id, terms]) => (
          <li key={id}>
            <h2 className="index-title">
              <a href={`/terms/${id}`}>{said(vocabularyHeads.get(id) ?? {}, 'title')}</a>
            </h2>
            <p className="index-side">{t('terms.count', { count: terms.size })}</p>
          </li>
        ))}
      </ul>
    </>
  )
}
