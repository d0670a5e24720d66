import { inLanguage } from '../_words/language.ts'
import { isDiscarded, letGoOfCovered, type Put, putIn, TAKEN, textsHere } from './kept-texts.ts'
import { restoreTyped } from './restore-typed.ts'

/** How soon what waits is tried again where the browser does not tell that there is a signal. */
const AGAIN_MS = 15_000

/** What became of what waits: it waits still, or what the site said. */
export type Waiting = { readonly kind: 'waits' } | Put

/**
 * On a copy of a draft's step that was opened with no signal, and on a blank form: puts what waits in this browser into
 * the form, so that writing goes on from there, and sends all of it once there is a signal. Sending it twice changes
 * nothing: each change names what stood in its field. What the server has cannot be told from a copy, which may be older
 * than what waits. Once the site has the draft no longer, nothing is sent that would begin it again by itself.
 *
 * @param now there is a signal already
 * @returns ends it
 */
export function onCopy(
  form: HTMLFormElement,
  draft: string,
  step: string,
  tell: (waiting: Waiting) => void,
  now = false,
): () => void {
  const found = textsHere(draft)
  // What was typed last comes first: a field takes the first text alone.
  const settled = new Set<string>()
  for (const { changes } of [...(found?.texts ?? [])].reverse()) restoreTyped(form, changes, settled)
  if (found) {
    tell({ kind: 'waits' })
    // What saves the form as it is typed in hears of it like this, and holds it from now on.
    form.dispatchEvent(new Event('input', { bubbles: true }))
    letGoOfCovered(draft)
  }
  let sending = false
  const send = async () => {
    const left = textsHere(draft)
    if (left === null || sending) return
    if (isDiscarded(left)) return tell({ kind: 'gone' })
    sending = true
    const done = await putIn(draft, step, left)
    sending = false
    if (done.kind === 'kept' && /\/both$/.test(done.to)) location.assign(done.to)
    else if (done.kind === 'offline') taken()
    else tell(done)
  }
  // What saves the form may have been first, also while this was sending the same and found no signal; then nothing is left.
  const taken = () => {
    if (found !== null && textsHere(draft) === null)
      tell({ kind: 'kept', to: inLanguage(`/write/${draft}/${step}`) })
  }
  const online = () => void send()
  if (now) online()
  const timer = setInterval(online, AGAIN_MS)
  window.addEventListener('online', online)
  form.addEventListener(TAKEN, taken)
  return () => {
    clearInterval(timer)
    form.removeEventListener(TAKEN, taken)
    window.removeEventListener('online', online)
  }
}
