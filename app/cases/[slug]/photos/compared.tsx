import type { PhotoFacts } from '#lib/db/photos.ts'
import { Photo, PhotoFigure } from '../../../_ui/photo.tsx'
import { Section } from '../../../_ui/section.tsx'
import { formatDate } from '../../../_words/format.ts'
import { words } from '../../../_words/index.ts'
import type { Pair } from './pair.ts'

/** How much of the later picture is laid over the earlier one, in hundredths. */
const SHARES = [0, 25, 50, 75, 100] as const

/** The two pictures beside one another, then one over the other; the choice of how much needs no script. */
export function Compared({ pair, facts }: { pair: Pair; facts: ReadonlyMap<string, PhotoFacts> }) {
  const t = words('photos')
  const { before, after, spot } = pair
  const both = [before, after].every(({ sha256 }) => facts.get(sha256)?.erased === false)
  return (
    <>
      <Section id="beside" title={spot.name} note={t('compare.beside')}>
        <div className="photo-pair">
          {[before, after].map((photo, index) => (
            <div key={index === 0 ? 'before' : 'after'}>
              <h3>{formatDate(photo.on)}</h3>
              <PhotoFigure
                photo={photo}
                facts={facts.get(photo.sha256)}
                sizes="(min-width: 48rem) 30rem, 100vw"
              />
            </div>
          ))}
        </div>
      </Section>
      {both && before.sha256 !== after.sha256 && (
        <Section id="over" title={t('compare.over')} note={t('compare.overNote')}>
          <fieldset className="photo-over">
            <legend>
              {t('compare.share', { before: formatDate(before.on), after: formatDate(after.on) })}
            </legend>
            <div className="photo-shares">
              {SHARES.map((share) => (
                <label key={share}>
                  <input type="radio" name="share" value={share} defaultChecked={share === 50} />
                  {share === 0
                    ? formatDate(before.on)
                    : share === 100
                      ? formatDate(after.on)
                      : t('compare.percent', { share })}
                </label>
              ))}
            </div>
            <div className="photo-layers">
              <Photo
                photo={before}
                facts={facts.get(before.sha256)}
                sizes="(min-width: 62rem) 46rem, 100vw"
              />
              <Photo photo={after} facts={facts.get(after.sha256)} sizes="(min-width: 62rem) 46rem, 100vw" />
            </div>
          </fieldset>
        </Section>
      )}
    </>
  )
}
