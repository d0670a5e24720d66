import { words } from '../_words/index.ts'
import { PageHead } from './page-head.tsx'

const t = words('account')

/** What stands on a page that is for others. The gate sets the 403. */
export const NotYours = () => (
  <PageHead title={t('notYours.title')} lead={t('notYours.lead')}>
    <p className="facts-line">
      <a href="/account">{t('notYours.account')}</a>
    </p>
  </PageHead>
)
