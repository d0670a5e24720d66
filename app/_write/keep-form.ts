import type { KeepWords } from './keep-words.ts'

/** Field → what its page showed, and what stands in it now. */
type Changes = Record<string, { was: string; is: string }>

/** What the server answers to a save. */
export interface KeptAnswer {
  readonly time: string
  readonly conflicts: readonly string[]
  /** What there is to say beside the fields of this step. */
  readonly said: readonly { readonly name: string; readonly kind: 'fault' | 'note'; readonly words: string }[]
}

/** Text of a draft that a browser holds until the server has it. */
interface Stored {
  readonly at: string
  readonly changes: Changes
}

export interface Keeper {
  /** Text that was here from before, when there is any. */
  readonly found: Stored | null
  /** Sends what was here from before and shows the draft anew. */
  readonly putIn: () => Promise<void>
  readonly drop: () => void
  readonly stop: () => void
}

export type Say = (words: string, link?: { readonly href: string; readonly words: string }) => void

/** How long typing must rest before it is saved, and how soon a save that failed is tried again. */
const REST_MS = 1200
const AGAIN_MS = 15_000

/**
 * Saves a form while it is typed in: to the browser at once, to the server when typing rests. Before the form itself
 * is sent, what is open is saved, so that a lost connection never loses the page.
 *
 * @param kept all that the server has of the draft: text that it has already is not offered again
 */
export function keepForm(
  form: HTMLFormElement,
  draft: string,
  kept: Readonly<Record<string, string>>,
  words: KeepWords,
  say: Say,
): Keeper {
  const place = `putlog-draft-${draft}`
  const wasInput = form.elements.namedItem(':was') as HTMLInputElement
  const was: Record<string, string> = JSON.parse(wasInput.value)
  const step = (form.elements.namedItem(':step') as HTMLInputElement).value
  const found = missingFrom(kept, readStored(place))
  writeStored(place, found)
  let timer: ReturnType<typeof setTimeout> | undefined
  let saving: Promise<boolean> | undefined
  let passing = false

  const changed = (): Changes => {
    const data = new FormData(form)
    const names = new Set([...Object.keys(was), ...data.keys()].filter((name) => !/^[:$]/.test(name)))
    const changes: Changes = {}
    for (const name of names) {
      const is = data.getAll(name).join('\n').replace(/\r\n?/g, '\n')
      if (is !== (was[name] ?? '')) changes[name] = { was: was[name] ?? '', is }
    }
    return changes
  }

  const store = () => {
    const changes = { ...found?.changes, ...changed() }
    writeStored(place, Object.keys(changes).length > 0 ? { at: new Date().toISOString(), changes } : null)
  }

  /** Whether nothing is left to save, or the server must be asked by the form itself. */
  const save = async (leaving = false): Promise<boolean> => {
    clearTimeout(timer)
    const changes = changed()
    if (Object.keys(changes).length === 0) return true
    if (!leaving) say(words.saving)
    const answer = await post(draft, { step, changes }, leaving)
    if (answer.kind === 'kept') {
      for (const [name, { is }] of Object.entries(changes)) was[name] = is
      wasInput.value = JSON.stringify(was)
      store()
      tell(form, answer.said)
      if (answer.conflicts.length > 0) say('', { href: `/write/${draft}/both`, words: words.both })
      else say(words.saved.replace('{time}', answer.time))
      return true
    }
    if (answer.kind === 'offline') {
      say(words.offline)
      timer = setTimeout(() => void again(), AGAIN_MS)
      return false
    }
    const back = `/sign-in?${new URLSearchParams({ to: `/write/${draft}/${step}` })}`
    if (answer.kind === 'signed-out') say(words.signedOut, { href: back, words: words.signIn })
    else if (answer.kind === 'sent') say(words.sent)
    else say(words.refused.replace('{why}', answer.why))
    return answer.kind === 'signed-out'
  }

  /** One save after the other; what was typed meanwhile is in the next. */
  const again = async (leaving = false): Promise<boolean> => {
    if (saving) await saving
    saving = save(leaving).finally(() => {
      saving = undefined
    })
    return saving
  }

  const onInput = () => {
    store()
    clearTimeout(timer)
    timer = setTimeout(() => void again(), REST_MS)
  }
  const onSubmit = (event: SubmitEvent) => {
    // A form may not be sent again from within its own submit event, where a save of nothing would end.
    if (passing || (!saving && Object.keys(changed()).length === 0)) return
    event.preventDefault()
    event.stopPropagation()
    const button = event.submitter
    void again().then((sound) => {
      if (!sound) return
      passing = true
      form.requestSubmit(button instanceof HTMLButtonElement ? button : null)
      passing = false
    })
  }
  const onHide = () => {
    if (document.visibilityState === 'hidden') void again(true)
    else void again()
  }
  const onOnline = () => void again()
  form.addEventListener('input', onInput)
  form.addEventListener('submit', onSubmit)
  document.addEventListener('visibilitychange', onHide)
  window.addEventListener('online', onOnline)

  return {
    found,
    putIn: async () => {
      if (found === null) return
      const answer = await post(draft, { step, changes: found.changes }, false)
      if (answer.kind !== 'kept') {
        say(answer.kind === 'refused' ? words.refused.replace('{why}', answer.why) : words.offline)
        return
      }
      writeStored(place, null)
      location.assign(`/write/${draft}/${answer.conflicts.length > 0 ? 'both' : step}`)
    },
    drop: () => writeStored(place, null),
    stop: () => {
      clearTimeout(timer)
      form.removeEventListener('input', onInput)
      form.removeEventListener('submit', onSubmit)
      document.removeEventListener('visibilitychange', onHide)
      window.removeEventListener('online', onOnline)
    },
  }
}

type Answer =
  | ({ readonly kind: 'kept' } & KeptAnswer)
  | { readonly kind: 'offline' }
  | { readonly kind: 'signed-out' }
  | { readonly kind: 'sent' }
  | { readonly kind: 'refused'; readonly why: string }

async function post(
  draft: string,
  body: { readonly step: string; readonly changes: Changes },
  leaving: boolean,
): Promise<Answer> {
  try {
    const response = await fetch(`/api/drafts/${draft}`, {
      method: 'POST',
      headers: { 'Content-Type': 'application/json' },
      body: JSON.stringify(body),
      keepalive: leaving,
    })
    if (response.ok) return { kind: 'kept', ...((await response.json()) as KeptAnswer) }
    if (response.status === 401) return { kind: 'signed-out' }
    if (response.status === 409) return { kind: 'sent' }
    if (response.status >= 500 || response.status === 429) return { kind: 'offline' }
    const problem = (await response.json()) as { detail?: string; errors?: readonly { detail: string }[] }
    return { kind: 'refused', why: problem.errors?.[0]?.detail ?? problem.detail ?? '' }
  } catch {
    return { kind: 'offline' }
  }
}

/** Puts what the server says beside the fields that it is about. */
function tell(form: HTMLFormElement, said: KeptAnswer['said']): void {
  for (const live of form.querySelectorAll<HTMLElement>('.field-live')) {
    const one = said.find(({ name }) => `live-${name}` === live.id)
    if (live.textContent !== (one?.words ?? '')) live.textContent = one?.words ?? ''
    live.dataset.kind = one?.kind ?? ''
  }
}

/** Browsers may refuse storage; then only the server keeps. */
function readStored(place: string): Stored | null {
  try {
    return JSON.parse(localStorage.getItem(place) ?? 'null') as Stored | null
  } catch {
    return null
  }
}

/** What of it the server does not have. */
function missingFrom(kept: Readonly<Record<string, string>>, stored: Stored | null): Stored | null {
  const changes = Object.entries(stored?.changes ?? {}).filter(([name, { is }]) => is !== (kept[name] ?? ''))
  return stored === null || changes.length === 0 ? null : { ...stored, changes: Object.fromEntries(changes) }
}

function writeStored(place: string, stored: Stored | null): void {
  try {
    if (stored === null) localStorage.removeItem(place)
    else localStorage.setItem(place, JSON.stringify(stored))
  } catch {
    // Full or forbidden.
  }
}
