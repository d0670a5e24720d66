import { authorNames } from '#lib/db/accounts.ts'
import { words } from '../_words/index.ts'

/** Who somebody is, in words, by the key that stands beside what they wrote or decided. */
export type NameOf = (key: string) => string

const DEMO = /^demo-(contributor|reviewer)-([a-z0-9]+)$/

/**
 * The names that these people chose. Demo hands say that they are invented, and whoever closed their account is a
 * former contributor.
 */
export async function namesOf(keys: readonly string[]): Promise<NameOf> {
  const t = words('review')
  const names = await authorNames(keys)
  return (key) => {
    const [, part, mark = ''] = DEMO.exec(key) ?? []
    if (part === 'contributor') return words('common')('author.demo', { letter: mark.toUpperCase() })
    if (part === 'reviewer') return t('who.demoReviewer', { mark })
    if (key === 'system') return t('who.system')
    return names.get(key) ?? t('who.former')
  }
}
