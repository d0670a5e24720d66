'use client'

import { useEffect, useState } from 'react'
import { splitLanguage } from '../_words/language.ts'
import { type Copy, copyOf } from './copy.ts'
import { isBlankStore, isOpenedStore, isPageStore } from './heads.ts'
import { dayAndTime } from './note.ts'

interface Line extends Copy {
  readonly address: string
}

type ListWords = Readonly<Record<'none' | 'noScript' | 'at' | 'old' | 'withdrawn', string>> & {
  /** Without it there is no button. */
  readonly drop?: string
}

const STORES = { pages: isPageStore, blanks: isBlankStore } as const

/** The pages or the blank forms that this browser holds, the latest first, and a way to be rid of all it holds. */
export function KeptList({ of, words }: { of: keyof typeof STORES; words: ListWords }) {
  const [lines, setLines] = useState<readonly Line[] | null>(null)
  useEffect(() => {
    void readLines(STORES[of]).then(setLines)
  }, [of])
  if (lines === null) return <p>{words.noScript}</p>
  if (lines.length === 0) return <p>{words.none}</p>
  const language = document.documentElement.lang
  return (
    <>
      <ul className="kept-list">
        {lines.map(({ address, title, keptAt, old, withdrawn }) => (
          <li key={address}>
            <a href={address} hrefLang={splitLanguage(address).language}>
              {title || address}
            </a>{' '}
            <span className="note">
              {words.at.replace('{date}', dayAndTime(keptAt, language))}
              {old && ` · ${words.old}`}
              {withdrawn && ` · ${words.withdrawn}`}
            </span>
          </li>
        ))}
      </ul>
      {words.drop !== undefined && (
        <div className="actions">
          <button
            className="button button-plain"
            type="button"
            onClick={() => void dropAll().then(() => location.reload())}
          >
            {words.drop}
          </button>
        </div>
      )}
    </>
  )
}

async function stores(wanted: (name: string) => boolean): Promise<string[]> {
  return 'caches' in window ? (await caches.keys()).filter(wanted) : []
}

async function readLines(wanted: (name: string) => boolean): Promise<Line[]> {
  const now = new Date()
  const lines = new Map<string, Line>()
  for (const name of await stores(wanted)) {
    const store = await caches.open(name)
    for (const request of await store.keys()) {
      const { pathname, search } = new URL(request.url)
      const copy = await store.match(request)
      if (copy) lines.set(pathname + search, { address: pathname + search, ...copyOf(copy.headers, now) })
    }
  }
  return [...lines.values()].sort((a, b) => b.keptAt.getTime() - a.keptAt.getTime())
}

async function dropAll(): Promise<void> {
  for (const name of await stores(isOpenedStore)) await caches.delete(name)
}
