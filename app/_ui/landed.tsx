'use client'

import { usePathname } from 'next/navigation'
import { useEffect, useRef } from 'react'

/**
 * Where a script drew another page in place of the last, what held the focus is gone: reading goes on at the start of
 * the new page, unless that page said where. Stands after the page, so that it is asked last.
 */
export function Landed() {
  const path = usePathname()
  const last = useRef(path)
  useEffect(() => {
    if (last.current === path) return
    last.current = path
    if (document.activeElement === document.body)
      document.getElementById('main')?.focus({ preventScroll: true })
  }, [path])
  return null
}
