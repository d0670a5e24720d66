import type { Metadata } from 'next'
import type { ReactNode } from 'react'
import { words } from '../_words/index.ts'
import { PageHead } from './page-head.tsx'

const t = words('pages')

/** The head of a page that is not there. */
export const NOT_HERE: Metadata = {
  get title() {
    return t('notFound.title')
  },
  robots: { index: false },
}

/**
 * What stands where nothing is; absent and hidden look the same. Pages draw it themselves and the gate sets
 * the 404: thrown `notFound()` leaves a page blank for those without JavaScript.
 */
export const NotHere = ({ lead = t('notFound.lead') }: { lead?: ReactNode }) => (
  <PageHead title={t('notFound.title')} lead={lead}>
    <p className="facts-line">
      <a href="/">{t('notFound.home')}</a>
      <a href="/recipes">{t('notFound.recipes')}</a>
      <a href="/cases">{t('notFound.cases')}</a>
    </p>
  </PageHead>
)
