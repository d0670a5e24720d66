'use client'

import { useEffect, useRef } from 'react'
import { inLanguage } from '../../_words/language.ts'

/** Pressed where the signal went since the page was opened, the form that it stands in leads to a blank one instead. */
export function BeginAway({ blank }: { blank: string }) {
  const place = useRef<HTMLInputElement>(null)
  useEffect(() => {
    const form = place.current?.form
    const onSubmit = (event: SubmitEvent) => {
      if (navigator.onLine) return
      event.preventDefault()
      event.stopPropagation()
      location.assign(inLanguage(blank))
    }
    form?.addEventListener('submit', onSubmit)
    return () => form?.removeEventListener('submit', onSubmit)
  }, [blank])
  return <input type="hidden" ref={place} />
}
