'use client'

import { useEffect, useState } from 'react'
import type { KeepWords } from './keep-words.ts'

const FIELDS = { latitude: 'field-place.latitude', longitude: 'field-place.longitude' }

const inputOf = (id: string) => {
  const element = document.getElementById(id)
  return element instanceof HTMLInputElement ? element : null
}

/** Takes the phone's position when asked, and only to a tenth of a degree. */
export function PlaceButton({ words }: { words: KeepWords }) {
  const [shown, setShown] = useState(false)
  const [failed, setFailed] = useState(false)
  useEffect(() => setShown(inputOf(FIELDS.latitude) !== null && 'geolocation' in navigator), [])
  if (!shown) return null
  const take = () =>
    navigator.geolocation.getCurrentPosition(
      ({ coords }) => {
        for (const axis of ['latitude', 'longitude'] as const) {
          const input = inputOf(FIELDS[axis])
          if (input === null) continue
          input.value = (Math.round(coords[axis] * 10) / 10).toFixed(1)
          input.dispatchEvent(new Event('input', { bubbles: true }))
        }
        setFailed(false)
      },
      () => setFailed(true),
      { timeout: 20_000, maximumAge: 600_000 },
    )
  return (
    <div>
      <button className="button button-plain" type="button" onClick={take}>
        {words.where}
      </button>
      {failed && <p role="alert">{words.whereFailed}</p>}
    </div>
  )
}
