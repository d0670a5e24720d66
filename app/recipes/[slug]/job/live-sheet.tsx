'use client'

import { type ReactNode, useEffect, useRef, useState } from 'react'
import { followTyping, type LiveState } from './live-typing.ts'

/** What is said of the sheet while it and the form are not of one mind. */
export type LiveWords = Readonly<Record<'busy' | 'failed' | 'done', string>>

/**
 * Works the sheet out anew as somebody types. Until it has come the sheet is marked as the one before. React draws it
 * once and then leaves it to the script: it changes with the form, which no part of React draws.
 */
export function LiveSheet({ words, children }: { words: LiveWords; children: ReactNode }) {
  const place = useRef<HTMLDivElement>(null)
  const [state, setState] = useState<LiveState>('still')
  const [said, setSaid] = useState('')

  useEffect(() => {
    const form = document.querySelector<HTMLFormElement>('form.job-form')
    if (!form || !place.current) return
    return followTyping(form, place.current, (now, answered) => {
      setState(now)
      if (!answered) return
      const { address, telling } = answered
      setSaid(address === undefined ? telling : words.done.replace('{telling}', () => telling))
    })
  }, [words])

  return (
    <div className="job-live" aria-busy={state === 'busy'}>
      <p className="job-live-note screen-only" role="status">
        {state === 'still' ? <span className="hidden-words">{said}</span> : words[state]}
      </p>
      <div className="job-place" ref={place}>
        {children}
      </div>
    </div>
  )
}
