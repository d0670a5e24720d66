'use client'

import { useEffect, useRef, useState } from 'react'
import { type Keeper, keepForm } from './keep-form.ts'
import type { KeepWords } from './keep-words.ts'
import { PlaceButton } from './place-button.tsx'

interface Told {
  readonly words: string
  readonly link?: { readonly href: string; readonly words: string } | undefined
}

/** Saves the form that it stands in by itself, says so, and offers what an earlier visit left in this browser. */
export function Keep(props: {
  draft: string
  form: string
  kept: Readonly<Record<string, string>>
  words: KeepWords
}) {
  const { draft, form, kept, words } = props
  const keeper = useRef<Keeper | null>(null)
  const [told, setTold] = useState<Told | null>(null)
  const [foundAt, setFoundAt] = useState<string | null>(null)
  useEffect(() => {
    // A browser gives the focus that a page asks for; a page that a script drew has to take it.
    document.getElementById('faults')?.focus()
    const element = document.getElementById(form)
    if (!(element instanceof HTMLFormElement)) return
    const made = keepForm(element, draft, kept, words, (sentence, link) => setTold({ words: sentence, link }))
    keeper.current = made
    setFoundAt(made.found?.at ?? null)
    return made.stop
  }, [draft, form, kept, words])
  return (
    <>
      <PlaceButton words={words} />
      <p className="note" role="status" id="keep">
        {told?.words}
        {told?.link && <a href={told.link.href}>{told.link.words}</a>}
      </p>
      {foundAt !== null && (
        <div className="write-kept" id="kept">
          <p>{words.found.replace('{at}', new Date(foundAt).toLocaleString())}</p>
          <div className="actions">
            <button className="button" type="button" onClick={() => void keeper.current?.putIn()}>
              {words.putIn}
            </button>
            <button
              className="button button-plain"
              type="button"
              onClick={() => {
                keeper.current?.drop()
                setFoundAt(null)
              }}
            >
              {words.drop}
            </button>
          </div>
        </div>
      )}
    </>
  )
}
