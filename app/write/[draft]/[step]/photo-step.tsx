import { v7 } from 'uuid'
import { caseBySlug } from '#lib/db/cases.ts'
import { photoFacts } from '#lib/db/photos.ts'
import type { EarlierPhoto } from '../../../_ui/photo-camera.tsx'
import { PhotoTold } from '../../../_ui/photo-told.tsx'
import { photoWords } from '../../../_ui/photo-words.ts'
import type { Query } from '../../../_ui/query.ts'
import { formatDate } from '../../../_words/format.ts'
import { words } from '../../../_words/index.ts'
import { FormParts } from '../../../_write/form-parts.tsx'
import { hintFor, itemLabel, labelFor } from '../../../_write/labels.ts'
import { PhotoAdder } from '../../../_write/photo-adder.tsx'
import { itemsOf } from '../../../_write/read.ts'
import { StepForm } from '../../../_write/step-form.tsx'
import type { FormView } from '../../../_write/view.ts'

const t = words('write')
const MOST = 30
const PARTS = ['sha256', 'alt', 'spot', 'takenOn'] as const

/** The pictures of a visit: those there are, those just sent, and the ways to add more. */
export async function PhotoStep({ view, query }: { view: FormView; query: Query }) {
  const { draft, typed } = view
  const there = itemsOf(typed, 'photos')
  const shown = new Set(there.map((index) => typed[`photos.${index}.sha256`]))
  const sent = [query.photo ?? []].flat().filter((sha) => /^[0-9a-f]{64}$/.test(sha) && !shown.has(sha))
  const next = (there.at(-1) ?? -1) + 1
  const fresh = sent.slice(0, MOST - there.length).map((sha, at) => ({ index: next + at, sha }))
  const proposed = Object.fromEntries(fresh.map(({ index, sha }) => [`photos.${index}.sha256`, sha]))
  const earlier = await earlierPhotos(typed.case ?? '')
  const names = fresh.flatMap(({ index }) => PARTS.map((part) => `photos.${index}.${part}`))
  const taken = there.length + fresh.length
  return (
    <div>
      <PhotoTold query={query} />
      <StepForm
        view={view}
        step="photos"
        more={undefined}
        extra={{
          names,
          fields: (
            <>
              {fresh.map(({ index }) => (
                <div key={index} className="write-list">
                  <FormParts
                    view={view}
                    parts={PARTS}
                    within={`photos.${index}.`}
                    more={undefined}
                    proposed={proposed}
                  />
                  <button
                    className="button button-plain"
                    type="submit"
                    name=":do"
                    value={`remove photos.${index}`}
                  >
                    {t('form.remove')}
                    <span className="hidden-words"> {itemLabel('photos', index + 1)}</span>
                  </button>
                </div>
              ))}
              <PhotoAdder
                from={next + fresh.length}
                room={MOST - taken}
                earlier={earlier}
                photoWords={photoWords()}
                words={{
                  alt: labelFor('photos.0.alt'),
                  altHint: hintFor('visit', 'photos.0.alt') ?? '',
                  spot: labelFor('photos.0.spot'),
                  takenOn: labelFor('photos.0.takenOn'),
                  remove: t('form.remove'),
                }}
              />
            </>
          ),
        }}
      />
      {taken < MOST && <WithoutScript back={`/write/${draft.id}/photos`} />}
    </div>
  )
}

/** Photos sent as a plain form, where there is no script to send them in pieces. */
const WithoutScript = ({ back }: { back: string }) => (
  <noscript>
    <form className="write-form" method="post" encType="multipart/form-data" action="/photos/add">
      <input type="hidden" name="back" value={back} />
      <input type="hidden" name="key" value={v7()} />
      <label className="choice">
        <input type="checkbox" name="keepDate" /> {words('photos')('pick.keepDate')}
      </label>
      <div className="field">
        <label htmlFor="plain-photo">{words('photos')('pick.choose')}</label>
        <input id="plain-photo" type="file" name="photo" accept="image/jpeg,image/png,image/webp" multiple />
      </div>
      <button className="button button-plain" type="submit">
        {t('form.addPhotos')}
      </button>
    </form>
  </noscript>
)

/** Pictures of places in the wall from visits that are published, to frame the same place again. */
async function earlierPhotos(slug: string): Promise<EarlierPhoto[]> {
  const found = await caseBySlug(slug)
  const photos = (found?.visits ?? []).flatMap(({ body }) =>
    (body.photos ?? []).flatMap(({ sha256, alt, spot }) =>
      spot === undefined ? [] : [{ sha256, alt, spot, on: body.on }],
    ),
  )
  const facts = await photoFacts(photos.map(({ sha256 }) => sha256))
  return photos.flatMap(({ on, ...photo }) => {
    const known = facts.get(photo.sha256)
    const width = known?.sizes.at(-1)
    return known === undefined || known.erased || width === undefined
      ? []
      : [{ ...photo, on: formatDate(on), src: `/photos/${photo.sha256}/${width}.jpg` }]
  })
}
