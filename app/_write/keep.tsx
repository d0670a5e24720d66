'use client'

import { useEffect, useState } from 'react'
import { NOTE_ID } from '../_offline/heads.ts'
import type { About } from './about.ts'
import { keepForm, type Say } from './keep-form.ts'
import type { KeepWords } from './keep-words.ts'
import { KeptHere } from './kept-here.tsx'
import { KeptOnCopy } from './kept-on-copy.tsx'
import { PlaceButton } from './place-button.tsx'

interface Told {
  readonly words: string
  readonly link?: { readonly href: string; readonly words: string } | undefined
}

/** The button that led to the page as it now is, where a script drew it, and its step. */
let pressed: { readonly step: string; readonly value: string } | undefined

/**
 * A browser gives the focus that a page asks for; a page that a script drew has to take it: for what is to be mended,
 * else for the item that was added, else for the button that was pressed, which was drawn anew.
 */
function takeFocus(form: HTMLFormElement, step: string): void {
  const button = pressed
  pressed = undefined
  form.addEventListener('submit', ({ submitter }) => {
    pressed = submitter instanceof HTMLButtonElement ? { step, value: submitter.value } : undefined
  })
  const faults = document.getElementById('faults')
  faults?.focus()
  if (faults !== null || button?.step !== step) return
  const same = form.querySelector<HTMLElement>(
    `button[value="${CSS.escape(button.value)}"]:not([aria-hidden])`,
  )
  // Whoever went on to another field meanwhile stays there.
  if (document.activeElement !== document.body && document.activeElement !== same) return
  const added = document.getElementById(decodeURIComponent(location.hash.slice(1)))
  ;(added ?? same)?.focus()
}

/** Saves the form that it stands in by itself, says so, and offers what an earlier visit left in this browser. */
export function Keep(props: {
  draft: string
  step: string
  version: number
  form: string
  kept: Readonly<Record<string, string>>
  words: KeepWords
  about: About
}) {
  const { draft, step, version, form, kept, words, about } = props
  const [told, setTold] = useState<Told | null>(null)
  const [isCopy, setCopy] = useState(false)
  useEffect(() => setCopy(document.getElementById(NOTE_ID) !== null), [])
  useEffect(() => {
    const element = document.getElementById(form)
    if (!(element instanceof HTMLFormElement)) return
    takeFocus(element, step)
    const say: Say = (sentence, link) => setTold({ words: sentence, link })
    return keepForm(element, draft, version, words, say, about)
  }, [draft, step, version, form, words, about])
  return (
    <>
      <PlaceButton words={words} />
      <p className="note" role="status" id="keep">
        {told?.words} {told?.link && <a href={told.link.href}>{told.link.words}</a>}
      </p>
      {isCopy ? (
        <KeptOnCopy draft={draft} step={step} form={form} words={words} />
      ) : (
        <KeptHere draft={draft} step={step} kept={kept} words={words} />
      )}
    </>
  )
}
