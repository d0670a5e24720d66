'use client'

import { useEffect, useRef, useState } from 'react'
import type { EarlierPhoto } from '../_ui/photo-camera.tsx'
import { PhotoPicker } from '../_ui/photo-picker.tsx'
import type { ReadyPhoto } from '../_ui/photo-send.ts'
import type { PhotoWords } from '../_ui/photo-words.ts'

export interface AdderWords {
  readonly alt: string
  readonly altHint: string
  readonly spot: string
  readonly takenOn: string
  readonly remove: string
}

interface Added {
  readonly index: number
  readonly photo: ReadyPhoto
  readonly spot: string
}

/**
 * Adds pictures to the form that it stands in: each becomes fields of its own, kept with the rest as soon as the
 * picture is there.
 *
 * @param from number of the first picture that is added
 */
export function PhotoAdder(props: {
  from: number
  room: number
  earlier: readonly EarlierPhoto[]
  photoWords: PhotoWords
  words: AdderWords
}) {
  const { from, room, earlier, photoWords, words } = props
  const [added, setAdded] = useState<readonly Added[]>([])
  const place = useRef<HTMLDivElement>(null)
  const next = useRef(from)
  // The form keeps what is typed in it; fields that came or went by themselves say so in the same way.
  // biome-ignore lint/correctness/useExhaustiveDependencies: what was added is what is told of
  useEffect(() => {
    if (next.current > from) place.current?.dispatchEvent(new Event('input', { bubbles: true }))
  }, [added, from])
  return (
    <div ref={place} className="write-parts">
      {added.map(({ index, photo, spot }) => (
        <AddedFields
          key={index}
          name={`photos.${index}`}
          onRemove={() => setAdded((all) => all.filter((one) => one.index !== index))}
          {...{ photo, spot, words }}
        />
      ))}
      <PhotoPicker
        words={photoWords}
        room={room - added.length}
        earlier={earlier}
        onReady={(photo, { spot = '' }) => {
          const index = next.current++
          setAdded((all) => [...all, { index, photo, spot }])
        }}
      />
    </div>
  )
}

function AddedFields(props: {
  name: string
  photo: ReadyPhoto
  spot: string
  words: AdderWords
  onRemove: () => void
}) {
  const { name, photo, spot, words, onRemove } = props
  const fields = [
    { key: 'alt', label: words.alt, value: '' },
    { key: 'spot', label: words.spot, value: spot },
    { key: 'takenOn', label: words.takenOn, value: photo.takenOn ?? '' },
  ]
  return (
    <div className="write-list">
      <picture>
        <img src={photo.src} alt="" width={160} height={Math.round((160 * photo.height) / photo.width)} />
      </picture>
      <input type="hidden" name={`${name}.sha256`} value={photo.sha256} />
      {fields.map(({ key, label, value }) => (
        <div className="field" key={key}>
          <label htmlFor={`field-${name}.${key}`}>{label}</label>
          {key === 'alt' && <p className="field-hint">{words.altHint}</p>}
          <div className="field-control">
            <input id={`field-${name}.${key}`} name={`${name}.${key}`} type="text" defaultValue={value} />
          </div>
        </div>
      ))}
      <button className="button button-plain" type="button" onClick={onRemove}>
        {words.remove}
      </button>
    </div>
  )
}
