'use client'

import { useEffect, useRef, useState } from 'react'
import { askedLanguage } from '#app/asked.ts'
import type { KeepWords } from './keep-words.ts'
import { forgetFigures, type KeptFigures, keepFigures, keptFigures, unitsTyped } from './kept-figures.ts'

interface Props {
  /** Every field that may be kept, by its name, with what it is called. */
  readonly labels: Readonly<Record<string, string>>
  readonly words: KeepWords
}

/**
 * Offers to keep one's own figures in this browser and to put in those it has kept. Nothing is put in unasked, and
 * nothing that was typed in other units or in another language. Without a script there is nothing here, and the address
 * still holds it all.
 */
export function KeepFigures({ labels, words }: Props) {
  const [kept, setKept] = useState<KeptFigures>()
  const [said, setSaid] = useState('')
  const [system, setSystem] = useState('')
  const place = useRef<HTMLDivElement>(null)
  useEffect(() => {
    const form = place.current?.closest('form')
    const take = () => setSystem(systemOf(form))
    setKept(read())
    take()
    form?.addEventListener('converted', take)
    return () => form?.removeEventListener('converted', take)
  }, [])
  if (!kept) return <div ref={place} />

  const units = unitsTyped(system, askedLanguage())
  const inputs = () =>
    Object.keys(labels).flatMap((name) => {
      const found = place.current?.closest('form')?.elements.namedItem(name)
      return found instanceof HTMLInputElement ? [found] : []
    })
  const offered = Object.keys(labels).filter((name) => kept[name]?.units === units)
  const keep = () => {
    const typed = inputs().flatMap(({ name, value }) => (value.trim() === '' ? [] : [[name, value.trim()]]))
    if (typed.length === 0) return setSaid(words.none)
    const done = reach((store) => keepFigures(store, Object.fromEntries(typed), units))
    setSaid(done ? words.kept : words.failed)
    setKept(read())
  }
  const put = () => {
    for (const input of inputs()) {
      const figure = kept[input.name]
      if (figure?.units !== units) continue
      input.value = figure.text
      input.dispatchEvent(new Event('input', { bubbles: true }))
    }
    setSaid(words.done)
  }
  const forget = () => {
    setSaid(reach(forgetFigures) ? words.forgotten : words.failed)
    setKept(read())
  }
  return (
    <div ref={place}>
      {offered.length > 0 && (
        <>
          <p>
            {words.offer.replace('{list}', () =>
              offered.map((name) => `${labels[name]} ${kept[name]?.text}`).join('; '),
            )}
          </p>
          <p className="actions">
            <button className="button button-plain" type="button" onClick={put}>
              {words.put}
            </button>
            <button className="button button-plain" type="button" onClick={forget}>
              {words.forget}
            </button>
          </p>
        </>
      )}
      <button className="button button-plain" type="button" onClick={keep}>
        {words.keep}
      </button>
      <p role="status" className="note">
        {said}
      </p>
    </div>
  )
}

const read = () => reach(keptFigures) || {}

/** Units that a form asks in; a script may have changed them since the page came. */
function systemOf(form: HTMLFormElement | null | undefined): string {
  const units = form?.elements.namedItem('units')
  return units instanceof HTMLInputElement ? units.value : ''
}

/** A browser may refuse even to name its store. */
function reach<T>(use: (store: Storage) => T): T | undefined {
  try {
    return use(window.localStorage)
  } catch {
    return undefined
  }
}
