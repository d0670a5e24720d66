import { words } from '../_words/index.ts'

const t = words('steward')

/** The pages of the steward's desk. */
export const StewardPlaces = () => (
  <nav aria-label={t('title')}>
    <p className="facts-line">
      <a href="/steward">{t('places.people')}</a>
      <a href="/steward/audit">{t('places.audit')}</a>
      <a href="/steward/take-down">{t('places.takeDown')}</a>
    </p>
  </nav>
)
