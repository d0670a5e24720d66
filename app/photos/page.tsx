import type { Metadata } from 'next'
import { type OwnPhoto, ownPhotos } from '#lib/db/photos.ts'
import { enter } from '../_http/actor.ts'
import { ActionForm } from '../_ui/action-form.tsx'
import { backToStart, NextPage } from '../_ui/next-page.tsx'
import { NotYours } from '../_ui/not-yours.tsx'
import { PageHead } from '../_ui/page-head.tsx'
import { Photo } from '../_ui/photo.tsx'
import { PhotoTold } from '../_ui/photo-told.tsx'
import { photoWords } from '../_ui/photo-words.ts'
import { first, type Query } from '../_ui/query.ts'
import { Section } from '../_ui/section.tsx'
import { Told } from '../_ui/told.tsx'
import { formatDate } from '../_words/format.ts'
import { words } from '../_words/index.ts'
import { removePhoto } from './actions.ts'
import { AddHere } from './add-here.tsx'
import { PlainPhotoForm } from './plain-form.tsx'

const t = words('photos')
const SIZE = 24

export const generateMetadata = (): Metadata => ({ title: t('own.title'), robots: { index: false } })

/** The photos that one sent, to look at, add to and, while nothing shows them, delete. */
export default async function Photos({ searchParams }: { searchParams: Promise<Query> }) {
  const member = await enter('/photos', '/photos')
  if (member === null) return <NotYours />
  const query = await searchParams
  const after = typeof query.after === 'string' ? query.after : undefined
  const photos = await ownPhotos(member, { limit: SIZE + 1, after }).catch(backToStart('/photos'))
  const page = photos.slice(0, SIZE)
  return (
    <>
      <PageHead title={t('own.title')} lead={t('own.lead')} />
      <PhotoTold query={query} />
      <Section id="add" title={t('own.add')}>
        <AddHere words={photoWords()} plain={<PlainPhotoForm back="/photos" />} />
      </Section>
      <Section id="sent" title={t('own.list')}>
        <Deleted query={query} />
        {page.length === 0 && <p>{t('own.none')}</p>}
        <div className="photo-grid">
          {page.map((photo) => (
            <Own key={photo.sha256} photo={photo} />
          ))}
        </div>
        <NextPage
          path="/photos"
          choices={{}}
          after={after}
          next={photos.length > SIZE ? (page.at(-1)?.place ?? null) : null}
        />
      </Section>
    </>
  )
}

/** Says which photo was deleted: the day it was sent, as its place in the list named it. */
function Deleted({ query }: { query: Query }) {
  const deleted = first(query.deleted) ?? ''
  const [, day] = /^(\d{4}-\d\d-\d\d)_[0-9a-f]{12}$/.exec(deleted) ?? []
  if (day === undefined || Number.isNaN(Date.parse(day))) return null
  return <Told key={deleted}>{t('own.deleted', { date: formatDate(day) })}</Told>
}

function Own({ photo }: { photo: OwnPhoto }) {
  const sent = t('own.uploaded', { date: formatDate(photo.uploadedAt.toISOString().slice(0, 10)) })
  return (
    <figure className="photo-figure">
      <Photo photo={{ sha256: photo.sha256, alt: sent }} facts={photo} />
      <figcaption>
        <span className="block">{sent}</span>
        <span className="note block">{t(photo.shown ? 'own.shown' : 'own.unused')}</span>
        {!photo.shown && (
          <ActionForm
            id={`remove-${photo.sha256.slice(0, 12)}`}
            action={removePhoto}
            hidden={{ sha256: photo.sha256 }}
            send={t('own.remove')}
            about={sent}
            faulty={words('account')('form.faulty')}
            plain
          />
        )}
      </figcaption>
    </figure>
  )
}
