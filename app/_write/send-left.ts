import { draftsHere, putIn, textsHere } from './kept-texts.ts'

/** Where a tab notes when something was refused, and how long it lets that be. */
const PLACE = 'putlog-refused-at'
const REST_MS = 10 * 60_000

/**
 * Sends what waits in this browser of any draft, and lets go of what arrived. Where a field stands otherwise by now both
 * texts are kept, and the draft's own page shows them; what somebody else typed here is refused, and stays.
 *
 * @param again also when it was refused a while ago
 */
export async function sendLeft(again: boolean): Promise<void> {
  if (!again && Date.now() - Number(sessionStorage.getItem(PLACE)) < REST_MS) return
  for (const draft of draftsHere()) {
    const found = textsHere(draft)
    if (found && 'why' in (await putIn(draft, '', found))) sessionStorage.setItem(PLACE, String(Date.now()))
  }
}
