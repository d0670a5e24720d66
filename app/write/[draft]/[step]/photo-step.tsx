import { v7 } from 'uuid'
import { caseBySlug } from '#lib/db/cases.ts'
import { photoFacts } from '#lib/db/photos.ts'
import type { EarlierPhoto } from '../../../_ui/photo-camera.tsx'
import { PhotoTold, photosOf } from '../../../_ui/photo-told.tsx'
import { photoWords } from '../../../_ui/photo-words.ts'
import type { Query } from '../../../_ui/query.ts'
import { formatDate, formatList } from '../../../_words/format.ts'
import { words } from '../../../_words/index.ts'
import { FormParts } from '../../../_write/form-parts.tsx'
import { hintFor, itemLabel, labelFor } from '../../../_write/labels.ts'
import { PhotoAdder } from '../../../_write/photo-adder.tsx'
import { photoNumber } from '../../../_write/photo-number.ts'
import { itemsOf } from '../../../_write/read.ts'
import { StepForm } from '../../../_write/step-form.tsx'
import type { FormView } from '../../../_write/view.ts'
import { photosAddress } from '../../../photos/add/address.ts'

const t = words('write')
const MOST = 30
const HEAD = 'photo-list'
const PARTS = ['sha256', 'alt', 'spot', 'takenOn'] as const

/** The pictures of a visit: those there are, those just sent, and the ways to add more. */
export async function PhotoStep({ view, query }: { view: FormView; query: Query }) {
  const { draft, typed } = view
  const there = itemsOf(typed, 'photos')
  const shown = there.map((index) => typed[`photos.${index}.sha256`] ?? '')
  const { ready, again } = photosOf(query)
  const taken = new Set(there)
  const sent = [...new Set([...ready, ...again])]
  const fresh = sent
    .filter((sha) => !shown.includes(sha))
    .slice(0, MOST - there.length)
    .map((sha, at) => {
      const index = photoNumber(sha, taken)
      taken.add(index)
      return { index, sha, label: itemLabel('photos', there.length + at + 1) }
    })
  const here = shown.flatMap((sha, at) => (sent.includes(sha) ? [itemLabel('photos', at + 1)] : []))
  const proposed = Object.fromEntries(fresh.map(({ index, sha }) => [`photos.${index}.sha256`, sha]))
  const earlier = await earlierPhotos(typed.case ?? '')
  const names = fresh.flatMap(({ index }) => PARTS.map((part) => `photos.${index}.${part}`))
  const count = there.length + fresh.length
  return (
    <div>
      <PhotoTold
        query={query}
        here={here.length === 0 ? undefined : t('photos.here', { list: formatList(here) })}
      />
      <h2 id={HEAD} tabIndex={-1}>
        {t('photos.list')}
      </h2>
      <StepForm
        view={view}
        step="photos"
        more={undefined}
        extra={{
          names,
          fields: (
            <>
              {fresh.map(({ index, label }) => (
                <fieldset key={index} className="write-list">
                  <legend>{label}</legend>
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
                    <span className="hidden-words"> {label}</span>
                  </button>
                </fieldset>
              ))}
              <PhotoAdder
                held={[
                  ...there.map((index, at) => [index, shown[at] ?? ''] as const),
                  ...fresh.map(({ index, sha }) => [index, sha] as const),
                ]}
                room={MOST - count}
                head={HEAD}
                earlier={earlier}
                photoWords={photoWords()}
                words={{
                  alt: labelFor('photos.0.alt'),
                  altHint: hintFor('visit', 'photos.0.alt') ?? '',
                  spot: labelFor('photos.0.spot'),
                  takenOn: labelFor('photos.0.takenOn'),
                  remove: t('form.remove'),
                  item: words('write')('item.photos', { number: '{number}' }),
                  removed: t('photos.removed', { item: '{item}' }),
                }}
              />
            </>
          ),
        }}
      />
      {count < MOST && <WithoutScript back={`/write/${draft.id}/photos`} />}
    </div>
  )
}

/** Photos sent as a plain form, where there is no script to send them in pieces. */
const WithoutScript = ({ back }: { back: string }) => (
  <noscript>
    <form className="write-form" method="post" encType="multipart/form-data" action={photosAddress(back)}>
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
