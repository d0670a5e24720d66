import { askedLanguage } from '#app/asked.ts'
import { LANGUAGE_HEADER } from '../_words/languages.ts'
import type { Sent } from './about.ts'

/** Field → what its page showed, and what stands in it now. */
export type Changes = Readonly<Record<string, { readonly was: string; readonly is: string }>>

/** What the server answers to a save. */
export interface KeptAnswer {
  readonly time: string
  readonly version: number
  /** Fields of this save that were changed elsewhere to something else. */
  readonly conflicts: readonly string[]
  /** Whether text of the draft waits beside its field to be chosen. */
  readonly waiting: boolean
  /** The draft was sent before: what came in waits beside it. */
  readonly sent: boolean
  /** How the step's fields stand, where somebody saved elsewhere since the page last heard; blank ones are left out. */
  readonly stands?: Readonly<Record<string, string>>
  /** What there is to say beside the fields of this step. */
  readonly said: readonly { readonly name: string; readonly kind: 'fault' | 'note'; readonly words: string }[]
}

export type Answer =
  | ({ readonly kind: 'kept' } & KeptAnswer)
  | { readonly kind: 'offline' }
  | { readonly kind: 'signed-out' }
  /** There is no such draft of theirs: it was discarded. */
  | { readonly kind: 'gone' }
  | { readonly kind: 'refused'; readonly why: string }

interface Saving extends Sent {
  readonly step: string
  readonly version: number
  readonly changes: Changes
}

/** Sends what was typed; it arrives also when the page is being left. */
export async function sendChanges(draft: string, body: Saving, leaving = false): Promise<Answer> {
  try {
    const response = await fetch(`/api/drafts/${draft}`, {
      method: 'POST',
      headers: { 'Content-Type': 'application/json', [LANGUAGE_HEADER]: askedLanguage() },
      body: JSON.stringify(body),
      keepalive: leaving,
    })
    if (response.ok) return { kind: 'kept', ...((await response.json()) as KeptAnswer) }
    if (response.status === 401) return { kind: 'signed-out' }
    if (response.status === 404) return { kind: 'gone' }
    if (response.status >= 500 || response.status === 429) return { kind: 'offline' }
    const problem = (await response.json()) as { detail?: string; errors?: readonly { detail: string }[] }
    return { kind: 'refused', why: problem.errors?.[0]?.detail ?? problem.detail ?? '' }
  } catch {
    return { kind: 'offline' }
  }
}
