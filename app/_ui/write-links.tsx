import { words } from '../_words/index.ts'
import { addressWith } from './query.ts'

const t = words('write')

/** The ways to write on from an entry's page: a further version, a recipe adapted, a visit to a case. */
export const WriteLinks = ({ kind, slug }: { kind: 'case' | 'recipe' | 'added'; slug: string }) => (
  <p className="facts-line screen-only">
    {kind === 'case' && <a href={addressWith('/write/new', { of: slug })}>{t('links.visit')}</a>}
    {kind === 'recipe' && <a href={addressWith('/write/new', { adapt: slug })}>{t('links.adapt')}</a>}
    <a href={addressWith('/write/new', { from: slug })}>{t('links.revise')}</a>
  </p>
)
