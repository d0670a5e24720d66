import type { FoundKind } from '#lib/entry/facets.ts'
import type { Dropped } from '#lib/search/index.ts'
import { textWithout } from '../_ui/find/nothing.tsx'
import { addressWith } from '../_ui/query.ts'
import { words } from '../_words/index.ts'

/** Where nothing has all of the words: which one to leave out, how many that would bring, and what else to try. */
export function NothingFound(props: {
  text: string
  kind: FoundKind | undefined
  dropped: readonly Dropped[]
}) {
  const { text, kind, dropped } = props
  const t = words('find')
  return (
    <>
      {dropped.length > 0 && (
        <>
          <p>{t('nothing.words')}</p>
          <ul>
            {dropped.map(({ value = '', brings }) => (
              <li key={value}>
                {t.rich('nothing.dropWord', {
                  label: value,
                  count: brings,
                  link: (inner) => (
                    <a href={addressWith('/find', { q: textWithout(text, value), kind })}>{inner}</a>
                  ),
                })}
              </li>
            ))}
          </ul>
        </>
      )}
      <p>{t.rich('nothing.all', { like: (inner) => <a href="/like">{inner}</a> })}</p>
    </>
  )
}
