'use client'

import { useEffect, useState } from 'react'
import { locale } from '../_words/language.ts'
import type { KeepWords } from './keep-words.ts'
import { type Found, findKept, letGo, onLetGo, putIn, stillKept } from './kept-texts.ts'

interface Props {
  draft: string
  /** Where to go on once the text is put in. */
  step: string
  /** All that the server has of the draft. */
  kept: Readonly<Record<string, string>>
  words: KeepWords
}

/** Offers what earlier windows left of a draft in this browser and the server does not have. */
export function KeptHere({ draft, step, kept, words }: Props) {
  const [found, setFound] = useState<Found | null>(null)
  const [failed, setFailed] = useState('')
  useEffect(() => {
    setFound(findKept(draft, kept))
    return onLetGo(draft, () => setFound((before) => before && stillKept(before)))
  }, [draft, kept])
  if (found === null) return null
  const put = async () => {
    const done = await putIn(draft, step, found)
    if (done.kind === 'kept') location.assign(done.to)
    else if (done.kind === 'refused') setFailed(words.refused.replace('{why}', () => done.why))
    else setFailed({ offline: words.offline, gone: words.gone, 'signed-out': words.signedOut }[done.kind])
  }
  const drop = () => {
    letGo(found)
    setFound(null)
  }
  return (
    <div className="write-kept" id="kept">
      <p>{words.found.replace('{at}', new Date(found.at).toLocaleString(locale()))}</p>
      <div className="actions">
        <button className="button" type="button" onClick={() => void put()}>
          {words.putIn}
        </button>
        <button className="button button-plain" type="button" onClick={drop}>
          {words.drop}
        </button>
      </div>
      {failed !== '' && <p role="alert">{failed}</p>}
    </div>
  )
}
