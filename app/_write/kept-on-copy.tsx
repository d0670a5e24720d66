'use client'

import { useEffect, useState } from 'react'
import type { KeepWords } from './keep-words.ts'
import { onCopy, type Waiting } from './on-copy.ts'

interface Props {
  draft: string
  step: string
  /** Id of the form. */
  form: string
  words: KeepWords
}

/** On a copy opened with no signal: what waits in this browser stands in the form, and goes up when it can. */
export function KeptOnCopy({ draft, step, form, words }: Props) {
  const [waiting, setWaiting] = useState<Waiting | null>(null)
  useEffect(() => {
    const element = document.getElementById(form)
    if (element instanceof HTMLFormElement) return onCopy(element, draft, step, setWaiting)
  }, [draft, step, form])
  return (
    <p className="note" role="status" id="waiting">
      {waiting?.kind === 'waits' && words.waits}
      {waiting?.kind === 'kept' && words.wentUp}
      {waiting?.kind === 'refused' && words.refused.replace('{why}', () => waiting.why)}
      {waiting?.kind === 'gone' && words.gone}
      {waiting?.kind === 'signed-out' && words.signedOut}
    </p>
  )
}
