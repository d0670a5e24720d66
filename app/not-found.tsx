import { PageHead } from './_ui/page-head.tsx'
import { words } from './_words/index.ts'

/** Absent and hidden look the same. */
export default function NotFound() {
  const t = words('pages')
  return (
    <PageHead title={t('notFound.title')} lead={t('notFound.lead')}>
      <p className="facts-line">
        <a href="/">{t('notFound.home')}</a>
        <a href="/recipes">{t('notFound.recipes')}</a>
        <a href="/cases">{t('notFound.cases')}</a>
      </p>
    </PageHead>
  )
}
