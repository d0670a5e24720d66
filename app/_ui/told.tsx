'use client'

import { type ReactNode, useEffect, useRef } from 'react'

/**
 * What was just done, where reading goes on after it: what held the focus is gone with what was removed. Give it a key
 * that differs from one deed to the next.
 */
export function Told({ children }: { children: ReactNode }) {
  const place = useRef<HTMLParagraphElement>(null)
  // A browser gives the focus that a page asks for; a page that a script drew has to take it.
  useEffect(() => place.current?.focus(), [])
  return (
    // biome-ignore lint/a11y/noAutofocus: without a script, reading starts here too
    <p className="act-told" role="status" tabIndex={-1} ref={place} autoFocus>
      {children}
    </p>
  )
}
