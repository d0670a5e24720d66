import { words } from '../_words/index.ts'

/** Which case the answers began from, or that there is none at that address. */
export function StartedFrom({ slug, title }: { slug: string; title: string | undefined }) {
  const t = words('find')
  return (
    <p>
      {title === undefined
        ? t('like.unknownCase', { slug })
        : t.rich('like.from', { title, link: (inner) => <a href={`/cases/${slug}`}>{inner}</a> })}
    </p>
  )
}
