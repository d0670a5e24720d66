'use client'

import { type ReactNode, useEffect, useRef, useState } from 'react'
import { v7 } from 'uuid'
import { NOTE_ID } from '../_offline/heads.ts'
import { type About, blankPage } from './about.ts'
import { keepForm } from './keep-form.ts'
import type { KeepWords } from './keep-words.ts'
import { beginAnew, textsHere } from './kept-texts.ts'
import { onCopy, type Waiting } from './on-copy.ts'
import { PlaceButton } from './place-button.tsx'
import { standAtWork } from './work-asked.ts'

type BlankWords = KeepWords & Readonly<Record<'notYours' | 'stays', string>>

interface Told {
  readonly words: string
  readonly link?: { readonly href: string; readonly words: string } | undefined
}

/**
 * Keeps what is typed on a blank form under the key in the page's address, and sends it once there is a signal. On a copy
 * that was opened with no signal the form shows, and the address gets a key; with a signal it shows only where text waits
 * under the key, and as soon as that has gone up its draft is opened.
 */
export function BlankKeep(props: {
  by: string
  asked: About['asked']
  /** The first step of the draft, where it goes on. */
  first: string
  title: string
  words: BlankWords
  /** What is said where it is not needed. */
  signal: ReactNode
  children: ReactNode
}) {
  const { by, asked: drawnFor, first, title, words, signal, children } = props
  const [shown, setShown] = useState(false)
  const [told, setTold] = useState<Told | null>(null)
  const box = useRef<HTMLDivElement>(null)
  useEffect(() => {
    const form = box.current?.querySelector('form')
    const isCopy = document.getElementById(NOTE_ID) !== null
    const query = new URLSearchParams(location.search)
    const [given, work] = [query.get('key'), query.get('work')]
    const found = given === null ? null : textsHere(given)
    if (!form || (!isCopy && found === null)) return
    if (found?.texts.some(({ about }) => about !== undefined && about.by !== by))
      return setTold({ words: words.notYours })
    const key = given ?? v7()
    // Whoever opens the form of a draft that was discarded asks for another.
    beginAnew(key)
    const asked = work ? { ...drawnFor, work } : drawnFor
    if (work) standAtWork(form, work)
    const page = blankPage(asked, key)
    // Only the address changes; the framework's note of the page stays with it.
    if (given === null)
      history.replaceState(history.state, '', `${location.pathname}${new URL(page, location.href).search}`)
    setShown(true)
    const about: About = { by, asked, title, page, state: 'begun' }
    const stop = keepForm(form, key, 1, words, (sentence, link) => setTold({ words: sentence, link }), about)
    const hear = (waiting: Waiting) => {
      if (waiting.kind === 'kept' && !isCopy) location.replace(waiting.to)
      else setTold(toldOf(waiting, words, { key, page }))
    }
    const deaf = onCopy(form, key, first, hear, !isCopy)
    return () => {
      stop()
      deaf()
    }
  }, [by, drawnFor, first, title, words])
  return (
    <div className="write-blank" ref={box}>
      <div hidden={shown}>{signal}</div>
      <div hidden={!shown}>
        {children}
        {shown && <PlaceButton words={words} />}
      </div>
      <p className="note" role="status" id="keep">
        {told?.words} {told?.link && <a href={told.link.href}>{told.link.words}</a>}
      </p>
    </div>
  )
}

/** What there is to say of text that waits, or went up. */
function toldOf(waiting: Waiting, words: BlankWords, { key, page }: { key: string; page: string }): Told {
  switch (waiting.kind) {
    case 'kept':
      return { words: words.begun, link: { href: `/write/${key}`, words: words.goOn } }
    case 'refused':
      return { words: `${words.refused.replace('{why}', () => waiting.why)} ${words.stays}` }
    case 'signed-out':
      return {
        words: words.signedOut,
        link: { href: `/sign-in?${new URLSearchParams({ to: page })}`, words: words.signIn },
      }
    case 'gone':
      return { words: words.gone, link: { href: page, words: words.beginWith } }
    default:
      return { words: words.waits }
  }
}
