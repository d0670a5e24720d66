'use client'

import { usePathname } from 'next/navigation'
import { useEffect, useRef } from 'react'

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
      address: location.href.replace(/#.*/, ''),
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
    const online = () => navigator.serviceWorker.controller?.postMessage({ kind: 'online' })
    navigator.serviceWorker.addEventListener('message', hear)
    window.addEventListener('online', online)
    return () => {
      navigator.serviceWorker.removeEventListener('message', hear)
      window.removeEventListener('online', online)
    }
  }, [])
  return null
}

/** Says over the copy that is shown that its entry was withdrawn. */
function hear({ data }: MessageEvent<{ told?: readonly { address: string; words: string }[] }>): void {
  const box = document.querySelector('#kept-copy > .notice')
  const words = data.told?.find(({ address }) => address === location.href.replace(/#.*/, ''))?.words
  if (!box || words === undefined || box.textContent?.includes(words)) return
  box.className = 'notice notice-withdrawn'
  const line = document.createElement('p')
  line.setAttribute('role', 'alert')
  line.textContent = words
  box.firstElementChild?.after(line)
}
