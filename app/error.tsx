'use client'

import { askedLanguage } from '#app/asked.ts'
import english from './_words/en/error.json'
import spanish from './_words/es/error.json'

const WORDS = { en: english, es: spanish }

/** Last resort; tells the visitor nothing internal. The catalogue's own file keeps the rest of it out of the browser. */
export default function ErrorPage({ reset }: { reset: () => void }) {
  const words = WORDS[askedLanguage()]
  return (
    <header className="page-head">
      <h1>{words.title}</h1>
      <p className="lead">{words.lead}</p>
      <p className="facts-line">
        <button type="button" className="button" onClick={reset}>
          {words.again}
        </button>
      </p>
    </header>
  )
}
