import { askedLanguage } from '#app/asked.ts'
import { LANGUAGE_HEADER } from '../_words/languages.ts'

/** A picture that is ready: what a form keeps of it. */
export interface ReadyPhoto {
  readonly sha256: string
  readonly width: number
  readonly height: number
  /** `YYYY-MM-DD` where the camera wrote it and its owner agreed to keep it. */
  readonly takenOn: string | null
  /** Whether the same picture had been sent before. */
  readonly known: boolean
  /** Address of its smallest width. */
  readonly src: string
}

export interface Progress {
  /** Bytes that have arrived, of all. */
  readonly sent: number
  readonly size: number
  readonly at: 'sending' | 'offline' | 'working'
}

export interface SendOptions {
  /** Made once for one file: the same key again goes on where it broke off. */
  readonly key: string
  readonly keepDate: boolean
  readonly onProgress: (progress: Progress) => void
  readonly signal: AbortSignal
}

/** Faults of one sending, not of the file: sent once more, it may be taken. */
const PASSING: readonly string[] = ['photo-digest', 'photo-too-long', 'photo-unworkable']

/** The server will not take this file; the message is for people. */
export class NotTaken extends Error {
  /** Whether the file itself is what is wrong, so that it would be refused each time. */
  readonly isFinal: boolean

  /** @param code of the fault of the file; undefined for a refusal that is not about it, such as a session that ended */
  constructor(message: string, code: string | undefined) {
    super(message)
    this.isFinal = code !== undefined && !PASSING.includes(code)
  }
}

interface Fault {
  readonly code: string
  readonly detail: string
}

interface Status {
  readonly state: 'receiving' | 'waiting' | 'ready' | 'refused'
  readonly size: number
  readonly offset: number
  readonly known: boolean
  readonly photo: Omit<ReadyPhoto, 'known'> | null
  readonly fault: Fault | null
}

/** Small enough that little is lost with a connection, large enough that a good one is not held up. */
const PIECE = 1024 * 1024
const LONGEST_WAIT_MS = 30_000

/**
 * Sends a file piece by piece and waits for the picture. A connection that is cut, a server that is away, a limit that
 * passes: it waits and goes on where it was, until `signal` stops it.
 *
 * @throws NotTaken when the server refuses the file; AbortError when stopped
 */
export async function sendPhoto(file: Blob, options: SendOptions): Promise<ReadyPhoto> {
  const { key, keepDate, onProgress, signal } = options
  const sha256 = await digestOf(file)
  const announced = JSON.stringify({ key, size: file.size, keepDate, ...(sha256 !== null && { sha256 }) })
  let status = await ask('/api/v1/photos', options, file.size, 0, () => ({
    method: 'POST',
    headers: { 'Content-Type': 'application/json' },
    body: announced,
  }))
  const at = `/api/v1/photos/${key}`
  while (status.state === 'receiving') {
    onProgress({ sent: status.offset, size: file.size, at: 'sending' })
    const from = status.offset
    status = await ask(at, options, file.size, from, (again) =>
      again
        ? {}
        : {
            method: 'PATCH',
            headers: { 'Content-Type': 'application/partial-upload', 'Upload-Offset': String(from) },
            body: file.slice(from, from + PIECE),
          },
    )
  }
  while (status.state === 'waiting') {
    onProgress({ sent: file.size, size: file.size, at: 'working' })
    status = await ask(at, options, file.size, file.size, () => ({}))
  }
  signal.throwIfAborted()
  if (status.photo === null) throw new NotTaken(status.fault?.detail ?? '', status.fault?.code)
  return { ...status.photo, known: status.known }
}

/**
 * One request, asked until it is answered. What a lost answer did is not known, so after a failure of a piece the
 * place is asked for instead of sending it again: `request(true)`.
 */
async function ask(
  url: string,
  { signal, onProgress }: SendOptions,
  size: number,
  sent: number,
  request: (again: boolean) => Omit<RequestInit, 'headers'> & { headers?: Record<string, string> },
): Promise<Status> {
  for (let failures = 0; ; failures += 1) {
    signal.throwIfAborted()
    try {
      const { headers, ...asked } = request(failures > 0)
      const told = { ...headers, [LANGUAGE_HEADER]: askedLanguage() }
      const answer = await fetch(url, { ...asked, headers: told, signal, cache: 'no-store' })
      // Somebody, most likely this page in another window, sent a piece meanwhile: the place is asked for.
      if (answer.ok) return (await answer.json()) as Status
      if (answer.status < 500 && answer.status !== 409) throw await refusalIn(answer)
    } catch (error) {
      if (error instanceof NotTaken) throw error
      signal.throwIfAborted()
    }
    onProgress({ sent, size, at: 'offline' })
    await wait(Math.min(1000 * 2 ** failures, LONGEST_WAIT_MS), signal)
  }
}

/** SHA-256 of a file, so that damage on the way and a file sent before are noticed; null where browsers do not tell. */
async function digestOf(file: Blob): Promise<string | null> {
  try {
    const digest = await crypto.subtle.digest('SHA-256', await file.arrayBuffer())
    return [...new Uint8Array(digest)].map((byte) => byte.toString(16).padStart(2, '0')).join('')
  } catch {
    return null
  }
}

async function refusalIn(answer: Response): Promise<NotTaken> {
  try {
    const { detail = '', errors: [fault] = [] } = (await answer.json()) as {
      detail?: string
      errors?: readonly Fault[]
    }
    return new NotTaken(fault?.detail ?? detail, fault?.code)
  } catch {
    return new NotTaken('', undefined)
  }
}

/** Waits, at most until the device says that it is online again. */
function wait(ms: number, signal: AbortSignal): Promise<void> {
  return new Promise((resolve) => {
    const done = () => {
      clearTimeout(timer)
      for (const [target, event] of ends) target.removeEventListener(event, done)
      resolve()
    }
    const timer = setTimeout(done, ms)
    const ends: [EventTarget, string][] = [
      [window, 'online'],
      [signal, 'abort'],
    ]
    for (const [target, event] of ends) target.addEventListener(event, done, { once: true })
  })
}
