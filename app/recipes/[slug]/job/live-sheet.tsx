'use client'

import { type ReactNode, useEffect, useLayoutEffect, useRef, useState } from 'react'
import { watchCopy } from '../../../_offline/tell.ts'
import { ask, followFields, isTouched, turn, wantsOtherFields } from './live-form.ts'

/** What is said of the sheet while it and the form are not of one mind. */
export type LiveWords = Readonly<Record<'busy' | 'fields' | 'failed' | 'done', string>>
type State = 'still' | 'busy' | 'fields' | 'failed'

/** Typing pauses this long before the server is asked, so that no key waits. */
const PAUSE_MS = 400

/** The sheet is marked as the one before only after the key was painted: drawing a long sheet anew takes its time. */
const MARK_MS = 100

/**
 * Works the sheet out anew as somebody types: asks the server for the page that the button would lead to and puts its
 * sheet in place of this one. Until it has come the sheet is marked as the one before.
 */
export function LiveSheet({ words, children }: { words: LiveWords; children: ReactNode }) {
  const [part, setPart] = useState<Element>()
  const place = useRef<HTMLDivElement>(null)
  useLayoutEffect(() => {
    if (part) place.current?.replaceChildren(part)
  }, [part])
  const [state, setState] = useState<State>('still')
  const [said, setSaid] = useState('')

  useEffect(() => {
    const form = document.querySelector<HTMLFormElement>('form.job-form')
    if (!form) return
    let pause: ReturnType<typeof setTimeout> | undefined
    let mark: ReturnType<typeof setTimeout> | undefined
    let asked: AbortController | undefined
    // Without a signal the worker has only what it was told to keep under the new address.
    const copy = watchCopy()
    const work = async () => {
      asked = new AbortController()
      const { signal } = asked
      try {
        const answered = await ask(form, signal)
        if (signal.aborted) return
        const open = document.querySelector<HTMLDetailsElement>('#working')?.open === true
        if (open) answered.part.querySelector('#working')?.setAttribute('open', '')
        setPart(answered.part)
        await turn()
        if (signal.aborted) return
        followFields(form, answered.page)
        // What was to be mended when the page came is told in the sheet's place from now on.
        for (const before of document.querySelectorAll<HTMLElement>('.page-head .job-faults')) {
          before.hidden = true
          before.removeAttribute('id')
        }
        if (answered.address) {
          window.history.replaceState(null, '', answered.address)
          copy.changed()
        }
        setState('still')
        setSaid(words.done.replace('{telling}', () => answered.telling))
      } catch {
        if (!signal.aborted) setState('failed')
      }
    }
    const stop = () => {
      clearTimeout(pause)
      clearTimeout(mark)
      asked?.abort()
    }
    const typed = () => {
      stop()
      if (wantsOtherFields(form)) return setState('fields')
      mark = setTimeout(() => setState('busy'), MARK_MS)
      pause = setTimeout(work, PAUSE_MS)
    }
    form.addEventListener('input', typed)
    if (isTouched(form)) typed()
    return () => {
      stop()
      copy.stop()
      form.removeEventListener('input', typed)
    }
  }, [words])

  return (
    <div className="job-live" aria-busy={state === 'busy'}>
      <p className="job-live-note screen-only" role="status">
        {state === 'still' ? <span className="hidden-words">{said}</span> : words[state]}
      </p>
      {part === undefined ? children : <div ref={place} />}
    </div>
  )
}
