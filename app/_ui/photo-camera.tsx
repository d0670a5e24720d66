'use client'

import { useEffect, useRef, useState } from 'react'
import type { PhotoWords } from './photo-words.ts'

/** A picture of an earlier visit, to frame the same spot again. */
export interface EarlierPhoto {
  readonly sha256: string
  readonly alt: string
  /** The place in the wall. */
  readonly spot: string
  /** Day of that visit, as it is printed. */
  readonly on: string
  /** Address of a width of about 1280 pixels. */
  readonly src: string
}

/**
 * The camera's picture with an earlier one half transparent over it, until the two meet. It opens only when asked,
 * and gives the camera back when closed; without one, or without leave, it says so and the plain ways stand above.
 */
export function PhotoCamera(props: {
  words: PhotoWords
  earlier: readonly EarlierPhoto[]
  onPicture: (files: readonly File[], about: { spot: string }) => void
}) {
  const { words, earlier, onPicture } = props
  const [chosen, setChosen] = useState(0)
  const [stream, setStream] = useState<MediaStream | null>(null)
  const [wrong, setWrong] = useState(false)
  const video = useRef<HTMLVideoElement>(null)
  const opener = useRef<HTMLButtonElement>(null)
  const wasOpen = useRef(false)
  const over = earlier[chosen]

  useEffect(() => {
    if (video.current) video.current.srcObject = stream
    // The buttons beside the camera's picture go with it, and one of them had the focus.
    if (stream === null && wasOpen.current) opener.current?.focus()
    wasOpen.current = stream !== null
    return () => {
      for (const track of stream?.getTracks() ?? []) track.stop()
    }
  }, [stream])

  const open = async () => {
    setWrong(false)
    try {
      const wanted = { facingMode: 'environment', width: { ideal: 2560 }, height: { ideal: 1920 } }
      setStream(await navigator.mediaDevices.getUserMedia({ video: wanted, audio: false }))
    } catch {
      setWrong(true)
    }
  }

  const shoot = async () => {
    const from = video.current
    if (from === null || over === undefined || from.videoWidth === 0) return
    const canvas = document.createElement('canvas')
    canvas.width = from.videoWidth
    canvas.height = from.videoHeight
    canvas.getContext('2d')?.drawImage(from, 0, 0)
    const blob = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, 'image/jpeg', 0.92))
    if (blob === null) return setWrong(true)
    const name = `${over.spot}.jpg`
    onPicture([new File([blob], name, { type: 'image/jpeg' })], { spot: over.spot })
    setStream(null)
  }

  if (over === undefined) return null
  return (
    <div className="photo-camera">
      <label>
        {words.earlier}
        <select value={chosen} onChange={({ target }) => setChosen(Number(target.value))}>
          {earlier.map(({ sha256, spot, on }, index) => (
            <option key={`${sha256}-${spot}`} value={index}>
              {`${spot}, ${on}`}
            </option>
          ))}
        </select>
      </label>
      {wrong && (
        <p className="photo-wrong" role="alert">
          {words.none}
        </p>
      )}
      {stream === null ? (
        <button ref={opener} className="button button-plain" type="button" onClick={open}>
          {words.open}
        </button>
      ) : (
        <>
          <p className="note">{words.over}</p>
          <div className="photo-frame">
            <video ref={video} autoPlay playsInline muted aria-label={words.frame} />
            {/* biome-ignore lint/performance/noImgElement: its sizes are made already */}
            <img src={over.src} alt={over.alt} />
          </div>
          <div className="actions">
            <button className="button" type="button" onClick={shoot}>
              {words.shoot}
            </button>
            <button className="button button-plain" type="button" onClick={() => setStream(null)}>
              {words.close}
            </button>
          </div>
        </>
      )}
    </div>
  )
}
