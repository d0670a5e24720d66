'use client'

import { type KeyboardEvent, useEffect, useId, useRef, useState } from 'react'

interface Props {
  id: string
  name: string
  'aria-describedby'?: string
  defaultValue: string
  maxLength: number
  /** Answers `?q=` with `{ suggestions: [{ text }] }`. */
  address: string
  listLabel: string
  /** What is said of so many suggestions, by their number. */
  said: readonly string[]
}

/** How long typing must rest before suggestions are asked for, in milliseconds. */
const REST_MS = 150
const LEAST_TYPED = 2

/**
 * A search box that suggests, after the combobox pattern of WAI-ARIA: arrows choose, Enter searches, Escape
 * closes. It is a plain box until the script runs, and stays one when suggestions cannot be had.
 */
export function SuggestInput({ address, listLabel, said, ...input }: Props) {
  const [isReady, setReady] = useState(false)
  const [offered, setOffered] = useState<readonly string[]>([])
  const [active, setActive] = useState(-1)
  const box = useRef<HTMLInputElement>(null)
  const asking = useRef<AbortController>(undefined)
  const listId = useId()
  useEffect(() => {
    setReady(true)
    return () => asking.current?.abort()
  }, [])

  const close = () => {
    asking.current?.abort()
    setOffered([])
    setActive(-1)
  }

  const ask = async (typed: string) => {
    close()
    if (typed.trim().length < LEAST_TYPED) return
    const controller = new AbortController()
    asking.current = controller
    await new Promise((resolve) => setTimeout(resolve, REST_MS))
    if (controller.signal.aborted) return
    const texts = await suggestionsFor(address, typed, controller.signal)
    if (!controller.signal.aborted) setOffered(texts)
  }

  const search = (text: string) => {
    close()
    if (box.current === null) return
    box.current.value = text
    box.current.form?.requestSubmit()
  }

  const onKeyDown = (event: KeyboardEvent) => {
    if (offered.length === 0) return
    const chosen = offered[active]
    if (event.key === 'ArrowDown') setActive(((active + 2) % (offered.length + 1)) - 1)
    else if (event.key === 'ArrowUp') setActive(active < 0 ? offered.length - 1 : active - 1)
    else if (event.key === 'Escape') close()
    else if (event.key === 'Enter' && chosen !== undefined) search(chosen)
    else return
    event.preventDefault()
  }

  const optionId = (index: number) => `${listId}-${index}`
  return (
    <div className="suggest">
      <input
        {...input}
        ref={box}
        type="search"
        enterKeyHint="search"
        {...(isReady && {
          role: 'combobox',
          autoComplete: 'off',
          'aria-autocomplete': 'list',
          'aria-expanded': offered.length > 0,
          'aria-controls': listId,
          'aria-activedescendant': active < 0 ? undefined : optionId(active),
          onInput: (event) => void ask(event.currentTarget.value),
          onBlur: close,
          onKeyDown,
        })}
      />
      {isReady && (
        <>
          <div
            id={listId}
            className="suggest-list"
            role="listbox"
            aria-label={listLabel}
            hidden={offered.length === 0}
          >
            {offered.map((text, index) => (
              // biome-ignore lint/a11y/useKeyWithClickEvents: keys are the box's, which keeps the focus
              <div
                key={text}
                id={optionId(index)}
                role="option"
                aria-selected={index === active}
                tabIndex={-1}
                onPointerDown={(event) => event.preventDefault()}
                onClick={() => search(text)}
              >
                {text}
              </div>
            ))}
          </div>
          <span className="hidden-words" role="status">
            {box.current?.value ? said[offered.length] : ''}
          </span>
        </>
      )}
    </div>
  )
}

/** What the site suggests; nothing when it cannot be asked, since the box does without. */
async function suggestionsFor(address: string, typed: string, signal: AbortSignal): Promise<string[]> {
  try {
    const answer = await fetch(`${address}?${new URLSearchParams({ q: typed })}`, { signal })
    if (!answer.ok) return []
    const { suggestions } = (await answer.json()) as { suggestions: { text: string }[] }
    return [...new Set(suggestions.map(({ text }) => text))]
  } catch {
    return []
  }
}
