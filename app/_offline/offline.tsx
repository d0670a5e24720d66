'use client'

import { usePathname } from 'next/navigation'
import { useEffect, useRef } from 'react'
import { draftOf } from './copy.ts'
import { NOTE_ID } from './heads.ts'
import { here } from './tell.ts'

/**
 * Has the worker keep what is opened, and tells it when there is a signal again. Draws nothing; a kept copy's note is
 * in the page that the worker answers.
 */
export function Offline() {
  const path = usePathname()
  const isLoaded = useRef(true)
  // biome-ignore lint/correctness/useExhaustiveDependencies: told again whenever the address changes
  useEffect(() => {
    if (process.env.NODE_ENV !== 'production' || !('serviceWorker' in navigator)) return
    const [navigation] = performance.getEntriesByType('navigation') as PerformanceNavigationTiming[]
    const passed = (navigation?.workerStart ?? 0) > 0
    const opened = {
      kind: 'opened',
      address: here(),
      loaded: isLoaded.current,
      passed,
    }
    isLoaded.current = false
    // A browser may refuse; then pages are read with a signal only.
    navigator.serviceWorker.register('/worker.js').catch(() => {})
    void navigator.serviceWorker.ready.then(({ active }) => active?.postMessage(opened))
  }, [path])
  useEffect(() => {
    if (!('serviceWorker' in navigator)) return
    const online = () => {
      navigator.serviceWorker.controller?.postMessage({ kind: 'online' })
      sendWhatWaits(true)
    }
    sendWhatWaits(false)
    navigator.serviceWorker.addEventListener('message', hear)
    window.addEventListener('online', online)
    return () => {
      navigator.serviceWorker.removeEventListener('message', hear)
      window.removeEventListener('online', online)
    }
  }, [])
  return null
}

/**
 * Sends what was typed with no signal, but for the draft that this page is of, which sees to it.
 *
 * @param back the signal came back just now
 */
function sendWhatWaits(back: boolean): void {
  if (!holdsText()) return
  if (!back && document.getElementById(NOTE_ID) !== null) return
  void import('../_write/send-left.ts').then(({ sendLeft }) =>
    sendLeft(back, draftOf(here()) ?? new URL(here()).searchParams.get('key') ?? undefined),
  )
}

/** Whether this browser holds text of a draft; one may refuse to say. */
function holdsText(): boolean {
  try {
    return Object.keys(localStorage).some((place) => place.startsWith('putlog-draft-'))
  } catch {
    return false
  }
}

/** Says over the copy that is shown that its entry was withdrawn. */
function hear({ data }: MessageEvent<{ told?: readonly { address: string; words: string }[] }>): void {
  const box = document.querySelector('#kept-copy > .notice')
  const words = data.told?.find(({ address }) => address === here())?.words
  if (!box || words === undefined || box.textContent?.includes(words)) return
  box.className = 'notice notice-withdrawn'
  const line = document.createElement('p')
  line.setAttribute('role', 'alert')
  line.textContent = words
  box.firstElementChild?.after(line)
}
