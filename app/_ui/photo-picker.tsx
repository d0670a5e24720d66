'use client'

import { type ChangeEvent, useEffect, useId, useRef, useState } from 'react'
import { type EarlierPhoto, PhotoCamera } from './photo-camera.tsx'
import { keyOfFile } from './photo-key.ts'
import { NotTaken, type Progress, type ReadyPhoto, sendPhoto } from './photo-send.ts'
import type { PhotoWords } from './photo-words.ts'

const ACCEPT = 'image/jpeg,image/png,image/webp'

interface Sending {
  readonly id: string
  readonly file: File
  readonly progress?: Progress
  readonly wrong?: string
  /** It would be refused again. */
  readonly isFinal?: boolean
}

/**
 * Chooses or takes photos and sends them, several one after the other, through cuts and closed pages. Each picture
 * that is ready is handed over; what it shows and where is asked for by the form, which answers whether it holds that
 * picture already.
 *
 * @param words from `photoWords()`, called on the server
 * @param room how many photos may still be added
 * @param earlier pictures of earlier visits that may lie over the camera's, to frame the same spot
 */
export function PhotoPicker(props: {
  words: PhotoWords
  room: number
  earlier?: readonly EarlierPhoto[]
  onReady: (photo: ReadyPhoto, about: { spot?: string }) => { already: boolean }
}) {
  const { words, room, earlier = [], onReady } = props
  const id = useId()
  const [keepDate, setKeepDate] = useState(false)
  const [sendings, setSendings] = useState<readonly Sending[]>([])
  const [said, setSaid] = useState('')
  const chooser = useRef<HTMLInputElement>(null)
  const keeper = useRef<HTMLInputElement>(null)
  const stops = useRef(new Map<string, AbortController>())
  const turn = useRef<Promise<void>>(Promise.resolve())
  const told = useRef({ onReady, keepDate })
  told.current = { onReady, keepDate }

  useEffect(() => {
    const running = stops.current
    return () => {
      for (const stop of running.values()) stop.abort()
    }
  }, [])

  const change = (one: string, over: Partial<Sending>) =>
    setSendings((all) => all.map((sending) => (sending.id === one ? { ...sending, ...over } : sending)))
  const drop = (one: string) => {
    stops.current.get(one)?.abort()
    stops.current.delete(one)
    setSendings((all) => all.filter((sending) => sending.id !== one))
  }

  const leaveOut = ({ id: one, file }: Sending) => {
    drop(one)
    setSaid(words.leftOut.replace('{name}', () => file.name))
    // The button that had the focus is gone with its file.
    ;(chooser.current ?? keeper.current)?.focus()
  }

  const run = async ({ id: one, file }: Sending, about: { spot?: string }) => {
    const stop = stops.current.get(one)
    if (stop === undefined) return
    const { key, forget } = keyOfFile(file)
    const onProgress = (progress: Progress) => change(one, { progress })
    try {
      const photo = await sendPhoto(file, {
        key,
        keepDate: told.current.keepDate,
        onProgress,
        signal: stop.signal,
      })
      forget()
      const { already } = told.current.onReady(photo, about)
      setSaid((already ? words.already : words.ready).replace('{name}', () => file.name))
      drop(one)
    } catch (error) {
      if (stop.signal.aborted) return
      // A refused file would be refused again under its key.
      forget()
      const refusal = error instanceof NotTaken ? error : undefined
      change(one, { wrong: refusal?.message || words.failed, isFinal: refusal?.isFinal ?? false })
    }
  }

  const add = (files: readonly File[], about: { spot?: string } = {}) => {
    const taken = files.slice(0, Math.max(0, room - sendings.length))
    const added = taken.map((file): Sending => ({ id: crypto.randomUUID?.() ?? `${Math.random()}`, file }))
    for (const { id: one } of added) stops.current.set(one, new AbortController())
    setSendings((all) => [...all, ...added])
    // One file at a time: a weak connection brings the first to its end instead of all of them nowhere.
    for (const sending of added) turn.current = turn.current.then(() => run(sending, about))
  }

  const choose = ({ target }: ChangeEvent<HTMLInputElement>) => {
    add([...(target.files ?? [])])
    target.value = ''
  }

  const again = (sending: Sending) => {
    stops.current.set(sending.id, new AbortController())
    setSendings((all) => all.map((one) => (one.id === sending.id ? { id: one.id, file: one.file } : one)))
    turn.current = turn.current.then(() => run(sending, {}))
  }

  return (
    <fieldset className="photo-picker">
      <legend>{words.legend}</legend>
      <p className="field-hint" id={`${id}-hint`}>
        {words.kinds} {words.faces}
      </p>
      {room - sendings.length > 0 ? (
        <div className="photo-ways">
          <label>
            {words.choose}
            <input
              ref={chooser}
              type="file"
              accept={ACCEPT}
              multiple
              onChange={choose}
              aria-describedby={`${id}-hint`}
            />
          </label>
          <label>
            {words.take}
            <input
              type="file"
              accept={ACCEPT}
              capture="environment"
              onChange={choose}
              aria-describedby={`${id}-hint`}
            />
          </label>
        </div>
      ) : (
        <p>{words.full}</p>
      )}
      <label className="photo-tick">
        <input
          ref={keeper}
          type="checkbox"
          checked={keepDate}
          onChange={({ target }) => setKeepDate(target.checked)}
        />
        <span>{words.keepDate}</span>
      </label>
      {earlier.length > 0 && <PhotoCamera words={words} earlier={earlier} onPicture={add} />}
      <ul className="photo-sending" aria-live="polite">
        {sendings.map((sending) => (
          <li key={sending.id}>
            <span>{sending.file.name}</span>
            <State words={words} sending={sending} />
            {sending.wrong !== undefined && !sending.isFinal && (
              <button
                className="button button-plain"
                type="button"
                onClick={() => again(sending)}
                aria-label={`${words.again}: ${sending.file.name}`}
              >
                {words.again}
              </button>
            )}
            <button
              className="button button-plain"
              type="button"
              onClick={() => leaveOut(sending)}
              aria-label={`${words.stop}: ${sending.file.name}`}
            >
              {words.stop}
            </button>
          </li>
        ))}
      </ul>
      <p className="photo-said" role="status">
        {said}
      </p>
    </fieldset>
  )
}

function State({ words, sending }: { words: PhotoWords; sending: Sending }) {
  const { progress, wrong, file } = sending
  if (wrong !== undefined) return <span className="photo-wrong">{wrong}</span>
  const at = progress?.at ?? 'sending'
  return (
    <>
      <progress max={file.size} value={progress?.sent ?? 0} aria-label={file.name} />
      <span>{words[at]}</span>
    </>
  )
}
