import { putIn, textsHere } from './kept-texts.ts'
import { restoreTyped } from './restore-typed.ts'

/** How soon what waits is tried again where the browser does not tell that there is a signal. */
const AGAIN_MS = 15_000

/** What became of what waits: it waits still, it was sent, or the site refused it and said why. */
export type Waiting =
  | { readonly kind: 'waits' }
  | { readonly kind: 'sent' }
  | { readonly kind: 'refused'; readonly why: string }

/**
 * On a copy of a draft's step that was opened with no signal: puts what waits in this browser into the form, so that
 * writing goes on from there, and sends all of it once there is a signal. Sending it twice changes nothing: each change
 * names what stood in its field. What the server has cannot be told from a copy, which may be older than what waits.
 *
 * @returns ends it
 */
export function onCopy(
  form: HTMLFormElement,
  draft: string,
  step: string,
  tell: (waiting: Waiting) => void,
): () => void {
  const found = textsHere(draft)
  for (const { changes } of found?.texts ?? []) restoreTyped(form, changes)
  if (found) {
    tell({ kind: 'waits' })
    // What saves the form as it is typed in hears of it like this.
    form.dispatchEvent(new Event('input', { bubbles: true }))
  }
  let sending = false
  const send = async () => {
    const left = textsHere(draft)
    if (left === null || sending) return
    sending = true
    const done = await putIn(draft, step, left)
    sending = false
    if ('to' in done) {
      if (/\/both$/.test(done.to)) location.assign(done.to)
      else tell({ kind: 'sent' })
    } else if (done.why !== null) tell({ kind: 'refused', why: done.why })
  }
  const online = () => void send()
  const timer = setInterval(online, AGAIN_MS)
  window.addEventListener('online', online)
  return () => {
    clearInterval(timer)
    window.removeEventListener('online', online)
  }
}
