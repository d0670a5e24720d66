'use client'

import { useCallback, useEffect, useRef, useState } from 'react'
import { GUEST_READER, NOTE_ID, READER_PLACE } from '../_offline/heads.ts'
import { dayAndTime } from '../_offline/note.ts'
import { splitLanguage } from '../_words/language.ts'
import { type BegunLine, linesOf } from './begun-lines.ts'
import type { BegunWords } from './begun-words.ts'
import { draftsHere, letGo, textsHere } from './kept-texts.ts'
import { sentOf, TRIED } from './send-left.ts'

/**
 * Drafts that this browser holds text of which has not gone up, each to be opened or thrown away; nothing where none.
 *
 * @param reader who the page was drawn for
 */
export function BegunList({ reader: drawnFor, words }: { reader: string; words: BegunWords }) {
  const [lines, setLines] = useState<readonly BegunLine[]>([])
  const [others, setOthers] = useState(false)
  /** Every line that stood here, by its draft: that its text is here no longer may be heard before that it went up. */
  const stood = useRef(new Map<string, BegunLine>())
  /** What went up as this page stood here. */
  const sent = useRef(new Set<string>())
  const look = useCallback(async () => {
    // A page that was kept was drawn for nobody in particular.
    const reader = document.getElementById(NOTE_ID) === null ? drawnFor : await readerHere()
    const found = draftsHere().map((draft) => ({ draft, texts: textsHere(draft)?.texts ?? [] }))
    setOthers(
      found.some(({ texts }) => texts.some(({ about }) => about !== undefined && about.by !== reader)),
    )
    // More was typed since, and whether that goes up is another question.
    for (const { draft } of found) sent.current.delete(draft)
    const now = linesOf(found, reader, [...stood.current.values()], sent.current)
    for (const line of now) stood.current.set(line.draft, line)
    setLines(now)
  }, [drawnFor])
  useEffect(() => {
    const again = (event?: Event) => {
      if (event instanceof CustomEvent) for (const draft of sentOf(event)) sent.current.add(draft)
      void look()
    }
    again()
    for (const event of [TRIED, 'storage', 'pageshow']) window.addEventListener(event, again)
    return () => {
      for (const event of [TRIED, 'storage', 'pageshow']) window.removeEventListener(event, again)
    }
  }, [look])
  if (lines.length === 0 && !others) return null
  const drop = (draft: string) => {
    const found = textsHere(draft)
    if (found) letGo(found)
    document.getElementById('begun-head')?.focus()
    void look()
  }
  const language = document.documentElement.lang
  return (
    <section className="section" id="begun" aria-labelledby="begun-head">
      <div>
        <h2 id="begun-head" tabIndex={-1}>
          {words.title}
        </h2>
      </div>
      <div className="section-body">
        <ul className="kept-list" aria-live="polite">
          {lines.map(({ draft, title, page, at, state }) => (
            <li key={draft}>
              {state === 'up' ? (
                <>
                  {title}: {words.wentUp} <a href={`/write/${draft}`}>{words.open}</a>
                </>
              ) : (
                <>
                  <a href={page} hrefLang={splitLanguage(page).language}>
                    {title}
                  </a>{' '}
                  <span className="note">
                    {words.at.replace('{date}', dayAndTime(new Date(at), language))}
                    {state !== 'there' && ` · ${words[state]}`}
                  </span>
                  <details className="kept-drop">
                    <summary>{words.drop}</summary>
                    <p>{words.dropText}</p>
                    <button className="button button-plain" type="button" onClick={() => drop(draft)}>
                      {words.dropSure.replace('{title}', () => title)}
                    </button>
                  </details>
                </>
              )}
            </li>
          ))}
        </ul>
        {others && <p>{words.others}</p>}
      </div>
    </section>
  )
}

/** Whose browser this is, as the worker noted it. */
async function readerHere(): Promise<string> {
  if (!('caches' in window)) return GUEST_READER
  const noted = await (await caches.open(READER_PLACE.store)).match(READER_PLACE.address)
  return (await noted?.text()) ?? GUEST_READER
}
