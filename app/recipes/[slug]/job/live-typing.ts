import { watchCopy } from '../../../_offline/tell.ts'
import { follow, followChildren } from './follow.ts'
import { type Answered, ask, followForm, isTouched, queryOf, turn, Vanished, wishOf } from './live-form.ts'
import type { Wish } from './wish.ts'

/** `still` where sheet and form are of one mind. */
export type LiveState = 'still' | 'busy' | 'failed'

/** Typing pauses this long before the server is asked, so that no key waits. */
const PAUSE_MS = 400

/** The sheet is marked as the one before only after the key was painted: drawing a long sheet anew takes its time. */
const MARK_MS = 100

/** What the server was asked for: what was typed, what a button does, or an address that somebody went back to. */
type Cause = 'typed' | 'pressed' | 'back'

/**
 * Follows a job's form as somebody fills it in: asks the server for the page that its button would lead to, and makes the
 * form, what stands above it and the sheet in `place` say what that page says. The address follows too; what a button
 * does to the form can be undone by going back.
 *
 * @param tell is told whether the sheet is of what stands in the form, and what came out
 * @returns how to stop
 */
export function followTyping(
  form: HTMLFormElement,
  place: Element,
  tell: (state: LiveState, answered?: Answered) => void,
): () => void {
  const copy = watchCopy()
  const vanished = new Vanished()
  let pause: ReturnType<typeof setTimeout> | undefined
  let mark: ReturnType<typeof setTimeout> | undefined
  let asked = new AbortController()
  let failed = false
  /** What a button asked for that no answer has brought yet; typing on does not take it back. */
  let wanted: { readonly wish: Wish; readonly moves: boolean } | undefined
  let shown = location.search
  /** What the address holds of the form, with versions or without. */
  let held = isTouched(form) ? '' : String(queryOf(form))

  const stop = () => {
    clearTimeout(pause)
    clearTimeout(mark)
    asked.abort()
  }
  const shownVersions = () => new URLSearchParams(location.search).has('is')
  const addressNow = () => `${location.pathname}?${queryOf(form)}`

  const work = async (address: string, wish: Wish, cause: Cause) => {
    asked = new AbortController()
    const { signal } = asked
    try {
      const answered = await ask(address, wish, signal)
      const retyped = takeForm(answered, cause)
      takeAddress(answered, cause)
      if (cause === 'pressed') {
        if (wanted?.moves) focusOn(form, wish)
        wanted = undefined
      }
      await turn()
      if (signal.aborted) return
      takeSheet(answered)
      clearTimeout(mark)
      failed = false
      tell('still', answered)
      if (retyped) typed()
    } catch {
      if (signal.aborted) return
      clearTimeout(mark)
      failed = true
      tell('failed')
    }
  }

  /** Says whether something was put in that the answer knows nothing of. */
  const takeForm = (answered: Answered, cause: Cause): boolean => {
    const units = queryOf(form).get('units')
    const converted = units !== queryOf(answered.form).get('units')
    const before = new Set([...form.elements].map((one) => (one as HTMLInputElement).name))
    if (cause === 'typed' && !converted) vanished.take(form, answered.form)
    else vanished.forget()
    followForm(form, answered.form, cause !== 'typed' || converted)
    if (converted) form.dispatchEvent(new Event('converted'))
    return vanished.putBack(form, before)
  }

  const takeSheet = ({ part, notices }: Answered) => {
    const above = document.querySelector('.job-notices')
    if (above && notices) follow(above, notices)
    const box = document.createElement('div')
    if (part) box.append(document.importNode(part, true))
    followChildren(place, box)
  }

  const takeAddress = ({ address }: Answered, cause: Cause) => {
    const now = address ?? addressNow()
    if (cause === 'pressed') window.history.pushState(null, '', now)
    else if (cause === 'typed' || !shownVersions()) window.history.replaceState(null, '', now)
    shown = location.search
    held = String(queryOf(form))
    // Without a signal the worker has only what it was told to keep under the new address.
    if (address !== undefined) copy.changed()
  }

  const begin = () => {
    stop()
    mark = setTimeout(() => tell('busy'), MARK_MS)
  }
  const typed = () => {
    begin()
    if (wanted !== undefined) wanted = { ...wanted, moves: false }
    pause = setTimeout(() => workNow(), PAUSE_MS)
  }
  /** Asks for what stands in the form, and for what a button still has to do. */
  const workNow = () =>
    wanted === undefined
      ? work(addressNow(), wishOf(form), 'typed')
      : work(addressNow(), wanted.wish, 'pressed')
  const pressed = (event: SubmitEvent) => {
    const button = event.submitter
    if (!(button instanceof HTMLButtonElement) || button.name !== 'show') return
    event.preventDefault()
    begin()
    // Going back leads to the form as it was when the button was pressed.
    if (held !== String(queryOf(form))) window.history.replaceState(null, '', addressNow())
    wanted = { wish: button.value, moves: true }
    void workNow()
  }
  const wentBack = () => {
    if (location.search === shown) return
    wanted = undefined
    begin()
    void work(location.href, wishOf(form), 'back')
  }
  /** The working was left out while it was closed. */
  const opened = ({ target }: Event) => {
    if (!(target instanceof HTMLDetailsElement) || !target.open || target.dataset.left === undefined) return
    begin()
    void workNow()
  }
  const online = () => {
    if (failed) typed()
  }

  form.addEventListener('input', typed)
  form.addEventListener('submit', pressed)
  place.addEventListener('toggle', opened, true)
  window.addEventListener('popstate', wentBack)
  window.addEventListener('online', online)
  form.setAttribute('data-live', '')
  if (isTouched(form)) typed()
  return () => {
    stop()
    copy.stop()
    form.removeAttribute('data-live')
    form.removeEventListener('input', typed)
    form.removeEventListener('submit', pressed)
    place.removeEventListener('toggle', opened, true)
    window.removeEventListener('popstate', wentBack)
    window.removeEventListener('online', online)
  }
}

/** A work that was added is filled in next; where one was taken out, the one that moved up is in its place. */
function focusOn(form: HTMLFormElement, wish: Wish): void {
  const kinds = form.querySelectorAll<HTMLSelectElement>('select[name^=use]')
  const dropped = Number(/^drop-(\d+)$/.exec(wish)?.[1] ?? kinds.length)
  kinds[Math.min(dropped, kinds.length) - 1]?.focus()
}
