import { words } from '../../_words/index.ts'

/** The whole of a list as files, under the same choices. */
export function Downloads({
  list,
  query,
}: {
  list: 'cases' | 'found' | 'like' | 'regions' | 'recipes'
  query: string
}) {
  const t = words('find')
  return (
    <p className="facts-line screen-only">
      <span>{t('list.download')}</span>
      {(['csv', 'json'] as const).map((format) => (
        <a key={format} className="touch" href={`/api/v1/find/${list}.${format}${query}`} download>
          {t(`list.${format}`)}
        </a>
      ))}
    </p>
  )
}
