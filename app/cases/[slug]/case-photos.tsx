import type { PhotoFacts } from '#lib/db/photos.ts'
import type { Published } from '#lib/db/published.ts'
import type { VisitBody } from '#lib/entry/visit.ts'
import { PhotoFigure } from '../../_ui/photo.tsx'
import { spotsOf } from '../../_ui/photo-spots.ts'
import { Section } from '../../_ui/section.tsx'
import { formatDate } from '../../_words/format.ts'
import { words } from '../../_words/index.ts'

/** What the visits photographed, visit by visit, and the way to comparing one spot on two days. */
export function CasePhotos(props: {
  slug: string
  visits: readonly Published<VisitBody>[]
  facts: ReadonlyMap<string, PhotoFacts>
}) {
  const t = words('photos')
  const visits = [...props.visits].sort((a, b) => (a.body.on < b.body.on ? -1 : 1))
  const shown = visits.filter(({ body }) => (body.photos ?? []).length > 0)
  if (shown.length === 0) return null
  return (
    <Section id="photos" title={t('title')} note={t('note')}>
      {spotsOf(visits.map(({ body }) => body)).length > 0 && (
        <p>
          <a className="touch" href={`/cases/${props.slug}/photos`}>
            {t('compare.lead')}
          </a>
        </p>
      )}
      {shown.map(({ slug, body }) => (
        <div key={slug}>
          <h3>{t('onDay', { date: formatDate(body.on) })}</h3>
          <div className="photo-grid">
            {(body.photos ?? []).map((photo) => (
              <PhotoFigure key={photo.sha256} photo={photo} facts={props.facts.get(photo.sha256)} />
            ))}
          </div>
        </div>
      ))}
    </Section>
  )
}
