import { asWritten } from '../../../_ui/as-written.ts'
import { SelectField } from '../../../_ui/field.tsx'
import type { Spot } from '../../../_ui/photo-spots.ts'
import { formatDate } from '../../../_words/format.ts'
import { words } from '../../../_words/index.ts'
import type { Pair } from './pair.ts'

/** Which spot and which two days. Another spot begins with its first and its last picture. */
export function Choice({ slug, spots, pair }: { slug: string; spots: readonly Spot[]; pair: Pair }) {
  const t = words('photos')
  const days = pair.spot.photos.map(({ sha256, on }) => ({ value: sha256, label: formatDate(on) }))
  return (
    <>
      {spots.length > 1 && (
        <ul>
          {spots.map((spot, index) => (
            <li key={spot.name}>
              {spot === pair.spot ? (
                <strong className="touch" {...asWritten()}>
                  {spot.name}
                </strong>
              ) : (
                <a className="touch" href={`/cases/${slug}/photos?spot=${index}`} {...asWritten()}>
                  {spot.name}
                </a>
              )}
            </li>
          ))}
        </ul>
      )}
      <form className="filter" method="get" action={`/cases/${slug}/photos`}>
        <input type="hidden" name="spot" value={spots.indexOf(pair.spot)} />
        <div className="form-grid">
          <SelectField name="before" label={t('compare.before')} value={pair.before.sha256} options={days} />
          <SelectField name="after" label={t('compare.after')} value={pair.after.sha256} options={days} />
        </div>
        <div className="actions">
          <button className="button" type="submit">
            {t('compare.show')}
          </button>
        </div>
      </form>
    </>
  )
}
