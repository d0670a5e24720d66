import { watchCopy } from '../_offline/tell.ts'
import { inLanguage } from '../_words/language.ts'
import { type About, sentWith } from './about.ts'
import { changesIn } from './changes-in.ts'
import type { KeepWords } from './keep-words.ts'
import { asDiscarded, keepIn, newPlace, onLetGo, TAKEN, textsHere } from './kept-texts.ts'
import { type Changes, type KeptAnswer, sendChanges } from './send-changes.ts'

export type Say = (words: string, link?: { readonly href: string; readonly words: string }) => void

/** How long typing must rest before it is saved, and how soon a save that failed is tried again. */
const REST_MS = 1200
const AGAIN_MS = 15_000

/**
 * Saves a form while it is typed in: to the browser at once, to the server when typing rests. Before the form itself
 * is sent, what is open is saved, so that a lost connection never loses the page. Where the draft is open elsewhere
 * too, it says so, and leads to both texts where both typed in one field. Where the draft was discarded, all that stands
 * in the form is kept in the browser, to begin another with.
 *
 * @param version of the draft as the page shows it
 * @param given what the draft is; one that was begun in this browser is begun on the server by its first save
 * @returns ends it
 */
export function keepForm(
  form: HTMLFormElement,
  draft: string,
  version: number,
  words: KeepWords,
  say: Say,
  given: About,
): () => void {
  const place = newPlace(draft)
  const wasInput = form.elements.namedItem(':was') as HTMLInputElement
  const was: Record<string, string> = JSON.parse(wasInput.value)
  const proposed: Record<string, string> = JSON.parse(
    (form.elements.namedItem(':proposed') as HTMLInputElement).value,
  )
  const step = (form.elements.namedItem(':step') as HTMLInputElement).value
  const both = `/write/${draft}/both?${new URLSearchParams({ step })}`
  const copy = watchCopy()
  /** On a blank form all steps of the draft stand on one page, which knows none of them as the server has them. */
  const blank = given.state !== 'there'
  let about = given
  /** Nobody began a draft by opening a form, though some of its choices stand for "not recorded". */
  let touched = !blank
  /** Whether what is typed here waits in the browser. */
  let held = false
  let known = version
  let timer: ReturnType<typeof setTimeout> | undefined
  let saving: Promise<Saved> | undefined
  let passing = false
  /** Both texts of a field are kept, and the one typed here is not the one that stands. */
  let contested = false
  /** Fields that were changed elsewhere since this page was drawn. */
  let stale = false

  const changed = (): Changes => changesIn(form, was, proposed)

  const keep = () => {
    held = keepIn(place, changed(), about)
  }

  /**
   * Where nothing waits any longer of what was begun here, it went up from elsewhere or was thrown away: a draft that was
   * discarded since is not begun once more.
   */
  const hearOfElsewhere = () => {
    if (held && about.state === 'begun' && textsHere(draft) === null) about = { ...about, state: 'there' }
  }

  const took = (changes: Changes, answer: KeptAnswer) => {
    for (const [name, { is }] of Object.entries(changes)) was[name] = is
    wasInput.value = JSON.stringify(was)
    known = answer.version
    copy.changed()
    if (blank && about.page === given.page) beThere()
    keep()
    tell(form, answer.said)
    contested = answer.waiting && (contested || answer.conflicts.length > 0)
    const { stands } = answer
    if (stands !== undefined && !blank)
      stale = Object.keys(was).some((name) => (stands[name] ?? '') !== was[name])
    if (!contested) form.dispatchEvent(new Event(TAKEN))
  }

  /** The draft is one like any other from here on, also where the page is opened again. */
  const beThere = () => {
    about = { ...about, state: 'there', page: `/write/${draft}/${step}` }
    history.replaceState(history.state, '', inLanguage(about.page))
  }

  /** The draft is no more: all that stands in the form waits to begin another. */
  const setAside = () => {
    about = asDiscarded(about, draft)
    for (const name of Object.keys(was)) was[name] = ''
    keep()
    say(words.gone, { href: about.page, words: words.beginWith })
  }

  /** What there is to say after a save, the weightiest first. */
  const sayKept = ({ sent, time }: KeptAnswer) => {
    if (sent) say(words.sent, { href: `/write/${draft}`, words: words.seeSent })
    else if (contested) say(words.both, { href: both, words: words.seeBoth })
    else if (stale) say(words.elsewhere, { href: `/write/${draft}/${step}`, words: words.reload })
    else if (blank) say(words.begun, { href: `/write/${draft}`, words: words.goOn })
    else say(words.saved.replace('{time}', time))
  }

  /** @param asking whether to hear how the draft stands though there is nothing to save */
  const save = async ({ leaving = false, asking = false }: How): Promise<Saved> => {
    clearTimeout(timer)
    const changes = changed()
    const some = Object.keys(changes).length > 0
    if (about.state === 'discarded') return 'open'
    if (!touched) return 'sound'
    if (!some && !asking) return 'sound'
    if (some && !leaving) say(words.saving)
    hearOfElsewhere()
    const answer = await sendChanges(draft, { step, version: known, changes, ...sentWith(about) }, leaving)
    if (answer.kind === 'kept') {
      took(changes, answer)
      if (some || answer.sent || contested || stale) sayKept(answer)
      return answer.sent ? 'sent' : 'sound'
    }
    if (answer.kind === 'gone') {
      setAside()
      return 'open'
    }
    if (!some) return 'sound'
    if (answer.kind === 'offline') {
      say(words.offline)
      timer = setTimeout(() => void again(), AGAIN_MS)
      return 'open'
    }
    const back = `/sign-in?${new URLSearchParams({ to: about.page })}`
    if (answer.kind === 'signed-out') say(words.signedOut, { href: back, words: words.signIn })
    else say(words.refused.replace('{why}', () => answer.why))
    return answer.kind === 'signed-out' ? 'sound' : 'open'
  }

  /** One save after the other; what was typed meanwhile is in the next. */
  const again = async (how: How = {}): Promise<Saved> => {
    if (saving) await saving
    saving = save(how).finally(() => {
      saving = undefined
    })
    return saving
  }

  const onInput = () => {
    touched = true
    hearOfElsewhere()
    keep()
    clearTimeout(timer)
    timer = setTimeout(() => void again(), REST_MS)
  }
  const onSubmit = (event: SubmitEvent) => {
    // A blank form has nobody to go to.
    if (blank) return event.preventDefault()
    // A form may not be sent again from within its own submit event, where a save of nothing would end.
    if (passing || (!saving && !contested && Object.keys(changed()).length === 0)) return
    event.preventDefault()
    event.stopPropagation()
    const button = event.submitter
    void again().then((saved) => {
      if (saved === 'open') return
      if (saved === 'sent') return location.assign(inLanguage(`/write/${draft}`))
      if (contested) return location.assign(inLanguage(both))
      passing = true
      form.requestSubmit(button instanceof HTMLButtonElement ? button : null)
      passing = false
    })
  }
  const onTurn = () => {
    const leaving = document.visibilityState === 'hidden'
    void again({ leaving, asking: !leaving })
  }
  const onOnline = () => void again()
  form.addEventListener('input', onInput)
  form.addEventListener('submit', onSubmit)
  document.addEventListener('visibilitychange', onTurn)
  window.addEventListener('online', onOnline)
  const deaf = onLetGo(draft, () => void again({ asking: true }))

  return () => {
    clearTimeout(timer)
    copy.stop()
    form.removeEventListener('input', onInput)
    form.removeEventListener('submit', onSubmit)
    document.removeEventListener('visibilitychange', onTurn)
    window.removeEventListener('online', onOnline)
    deaf()
  }
}

/** What became of a save: nothing is left to save (or the form itself has to ask); something is; the draft was sent. */
type Saved = 'sound' | 'open' | 'sent'

interface How {
  readonly leaving?: boolean
  readonly asking?: boolean
}

/** Puts what the server says beside the fields that it is about. */
function tell(form: HTMLFormElement, said: KeptAnswer['said']): void {
  for (const live of form.querySelectorAll<HTMLElement>('.field-live')) {
    const one = said.find(({ name }) => `live-${name}` === live.id)
    if (live.textContent !== (one?.words ?? '')) live.textContent = one?.words ?? ''
    live.dataset.kind = one?.kind ?? ''
  }
}
