'use client'

import { useEffect, useRef, useState } from 'react'
import type { EarlierPhoto } from '../_ui/photo-camera.tsx'
import { PhotoPicker } from '../_ui/photo-picker.tsx'
import type { ReadyPhoto } from '../_ui/photo-send.ts'
import type { PhotoWords } from '../_ui/photo-words.ts'
import { photoNumber } from './photo-number.ts'

export interface AdderWords {
  readonly alt: string
  readonly altHint: string
  readonly spot: string
  readonly takenOn: string
  readonly remove: string
  /** With `{number}`: what a picture is called. */
  readonly item: string
  /** With `{item}`: that it was taken out. */
  readonly removed: string
}

interface Added {
  readonly index: number
  readonly photo: ReadyPhoto
  readonly spot: string
}

/**
 * Adds pictures to the form that it stands in: each becomes fields of its own, kept with the rest as soon as the
 * picture is there. One that the form holds already is not added again.
 *
 * @param held the pictures that the form holds, by the numbers of their items
 * @param head id of the heading where reading goes on once a picture was taken out
 */
export function PhotoAdder(props: {
  held: readonly (readonly [number, string])[]
  room: number
  head: string
  earlier: readonly EarlierPhoto[]
  photoWords: PhotoWords
  words: AdderWords
}) {
  const { held, room, head, earlier, photoWords, words } = props
  const [added, setAdded] = useState<readonly Added[]>([])
  const [said, setSaid] = useState('')
  const place = useRef<HTMLDivElement>(null)
  const numbers = useRef(new Map(held))
  const changed = useRef(false)
  // The form keeps what is typed in it; fields that came or went by themselves say so in the same way.
  // biome-ignore lint/correctness/useExhaustiveDependencies: what was added is what is told of
  useEffect(() => {
    if (changed.current) place.current?.dispatchEvent(new Event('input', { bubbles: true }))
  }, [added])

  const add = (photo: ReadyPhoto, { spot = '' }: { spot?: string }) => {
    const already = [...numbers.current.values()].includes(photo.sha256)
    if (already) return { already }
    const index = photoNumber(photo.sha256, new Set(numbers.current.keys()))
    numbers.current.set(index, photo.sha256)
    changed.current = true
    setSaid('')
    setAdded((all) => [...all, { index, photo, spot }])
    return { already }
  }
  const remove = (index: number, label: string) => {
    numbers.current.delete(index)
    setAdded((all) => all.filter((one) => one.index !== index))
    setSaid(words.removed.replace('{item}', () => label))
    // The button that had the focus is gone with its picture.
    document.getElementById(head)?.focus()
  }

  return (
    <div ref={place} className="write-parts">
      {added.map(({ index, photo, spot }, at) => {
        const label = words.item.replace('{number}', String(held.length + at + 1))
        return (
          <AddedFields
            key={index}
            name={`photos.${index}`}
            onRemove={() => remove(index, label)}
            {...{ photo, spot, label, words }}
          />
        )
      })}
      <p className="photo-said" role="status">
        {said}
      </p>
      <PhotoPicker words={photoWords} room={room - added.length} earlier={earlier} onReady={add} />
    </div>
  )
}

function AddedFields(props: {
  name: string
  photo: ReadyPhoto
  spot: string
  label: string
  words: AdderWords
  onRemove: () => void
}) {
  const { name, photo, spot, label, words, onRemove } = props
  const fields = [
    { key: 'alt', label: words.alt, value: '' },
    { key: 'spot', label: words.spot, value: spot },
    { key: 'takenOn', label: words.takenOn, value: photo.takenOn ?? '' },
  ]
  return (
    <fieldset className="write-list">
      <legend>{label}</legend>
      <picture>
        <img src={photo.src} alt="" width={160} height={Math.round((160 * photo.height) / photo.width)} />
      </picture>
      <input type="hidden" name={`${name}.sha256`} value={photo.sha256} />
      {fields.map(({ key, label: asked, value }) => (
        <div className="field" key={key}>
          <label htmlFor={`field-${name}.${key}`}>{asked}</label>
          {key === 'alt' && (
            <p className="field-hint" id={`field-${name}.${key}-hint`}>
              {words.altHint}
            </p>
          )}
          <div className="field-control">
            <input
              id={`field-${name}.${key}`}
              name={`${name}.${key}`}
              type="text"
              defaultValue={value}
              {...(key === 'alt' && { 'aria-describedby': `field-${name}.${key}-hint` })}
            />
          </div>
        </div>
      ))}
      <button className="button button-plain" type="button" onClick={onRemove}>
        {words.remove}
        <span className="hidden-words"> {label}</span>
      </button>
    </fieldset>
  )
}
