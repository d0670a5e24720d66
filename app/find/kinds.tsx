import { FOUND_KINDS, type FoundKind } from '#lib/entry/facets.ts'
import { addressWith } from '../_ui/query.ts'
import { words } from '../_words/index.ts'

/** How many results are of each kind, each leading to those alone; cases can be narrowed further. */
export function Kinds(props: {
  text: string
  kind: FoundKind | undefined
  counts: Readonly<Record<FoundKind, number>>
}) {
  const { text, kind, counts } = props
  const t = words('find')
  const known = FOUND_KINDS.filter((one) => counts[one] > 0 || one === kind)
  if (known.length === 0) return null
  return (
    <nav aria-label={t('search.kinds')}>
      <ul className="nav kinds">
        <li>
          <a href={addressWith('/find', { q: text })} aria-current={kind === undefined ? 'true' : undefined}>
            {t('search.everything')}
          </a>
        </li>
        {known.map((one) => (
          <li key={one}>
            <a
              href={addressWith('/find', { q: text, kind: one })}
              aria-current={kind === one ? 'true' : undefined}
            >
              {t('search.kind', { name: t(`kind.${one}`), count: counts[one] })}
            </a>
          </li>
        ))}
      </ul>
      {counts.case > 0 && (
        <p>
          <a className="touch" href={addressWith('/cases', { q: text })}>
            {t('search.narrow')}
          </a>
        </p>
      )}
    </nav>
  )
}
