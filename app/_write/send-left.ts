import { draftsHere, isDiscarded, putIn, textsHere } from './kept-texts.ts'

/** Where a tab notes when something was refused, and how long it lets that be. */
const PLACE = 'putlog-refused-at'
const REST_MS = 10 * 60_000

/** Told to the window once all was tried, so that a list of what waits shows what waits still, and what went up. */
export const TRIED = 'putlog-tried'

/** Drafts whose text went up, as {@link TRIED} tells them. */
export const sentOf = ({ detail }: CustomEvent<readonly string[]>): readonly string[] => detail

/**
 * Sends what waits in this browser of any draft, and lets go of what arrived. Where a field stands otherwise by now both
 * texts are kept, and the draft's own page shows them; what somebody else typed here is refused, and stays. Of a draft
 * that was discarded nothing is sent.
 *
 * @param again also when it was refused a while ago
 * @param own the draft that the page itself is about, and sees to
 */
export async function sendLeft(again: boolean, own?: string): Promise<void> {
  if (!again && Date.now() - Number(sessionStorage.getItem(PLACE)) < REST_MS) return
  const sent: string[] = []
  for (const draft of draftsHere()) {
    const found = draft === own ? null : textsHere(draft)
    if (found === null || isDiscarded(found)) continue
    const { kind } = await putIn(draft, '', found)
    if (kind === 'kept') sent.push(draft)
    else sessionStorage.setItem(PLACE, String(Date.now()))
  }
  window.dispatchEvent(new CustomEvent(TRIED, { detail: sent }))
}
