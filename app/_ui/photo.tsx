import type { PhotoFacts } from '#lib/db/photos.ts'
import type { VisitPhoto } from '#lib/entry/visit.ts'
import { formatDate } from '../_words/format.ts'
import { words } from '../_words/index.ts'
import { asWritten } from './as-written.ts'

const sourceSet = ({ sha256, sizes }: PhotoFacts, format: 'webp' | 'jpg') =>
  sizes.map((width) => `/photos/${sha256}/${width}.${format} ${width}w`).join(', ')

interface Props {
  photo: Pick<VisitPhoto, 'sha256' | 'alt'>
  /** Absent for a picture that nobody knows any more. */
  facts: PhotoFacts | undefined
  /** How wide it will be drawn, as the attribute `sizes` of an image has it. */
  sizes?: string
}

/** One picture, in the width that the screen needs. An erased one says so in its place. */
export function Photo({ photo, facts, sizes = '(min-width: 48rem) 20rem, 100vw' }: Props) {
  if (facts === undefined || facts.erased) return <p className="photo-gone">{words('photos')('gone')}</p>
  const middle = facts.sizes.find((width) => width >= 768) ?? facts.sizes.at(-1)
  return (
    <picture className="photo">
      <source type="image/webp" srcSet={sourceSet(facts, 'webp')} sizes={sizes} />
      <img
        src={`/photos/${photo.sha256}/${middle}.jpg`}
        srcSet={sourceSet(facts, 'jpg')}
        sizes={sizes}
        alt={photo.alt}
        {...asWritten()}
        width={facts.width}
        height={facts.height}
        loading="lazy"
        decoding="async"
      />
    </picture>
  )
}

/** A picture with what it shows, where and when, and the way to it in full. */
export function PhotoFigure({ photo, facts, sizes }: Props & { photo: VisitPhoto }) {
  const t = words('photos')
  const { sha256, alt, spot, takenOn } = photo
  const shown = facts !== undefined && !facts.erased
  return (
    <figure className="photo-figure">
      <Photo photo={photo} facts={facts} {...(sizes !== undefined && { sizes })} />
      <figcaption>
        {spot !== undefined && (
          <span className="photo-spot" {...asWritten()}>
            {spot}
          </span>
        )}
        <span className="block" {...asWritten()}>
          {alt}
        </span>
        {takenOn !== undefined && (
          <span className="note block">{t('taken', { date: formatDate(takenOn) })}</span>
        )}
        {shown && (
          <a className="note" href={`/photos/${sha256}/kept.jpg`}>
            {t('full', { width: facts.width, height: facts.height })}
            <span className="hidden-words">: {alt}</span>
          </a>
        )}
      </figcaption>
    </figure>
  )
}
