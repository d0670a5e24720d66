import { followChildren } from './follow.ts'
import { type Wish, wishFor } from './wish.ts'

/** What the server answered to a form. */
export interface Answered {
  /** As the page holds it; an address that is kept for where there is a sheet. */
  readonly form: HTMLFormElement
  readonly address: string | undefined
  /** Its sheet or what is to be mended; neither where a reason is waited for. */
  readonly part: Element | undefined
  /** What stands above the form: how the sheet differs from what its address was made from, and the like. */
  readonly notices: Element | null
  /** Its first figure in words, or how much is to be mended. */
  readonly telling: string
}

/** What stands in a form, as its address would have it; blank fields are left out. */
export function queryOf(form: HTMLFormElement): URLSearchParams {
  const query = new URLSearchParams()
  for (const [name, value] of new FormData(form))
    if (typeof value === 'string' && value.trim() !== '') query.append(name, value)
  if (query.get('in') === query.get('units')) query.delete('in')
  return query
}

const textsOf = (form: HTMLFormElement) => [
  ...form.querySelectorAll<HTMLInputElement | HTMLTextAreaElement>('input[type=text], textarea'),
]

/** Names of the choices that the page does not know yet: it was drawn for others. */
const changedChoices = (form: HTMLFormElement): string[] =>
  [...form.querySelectorAll('select')]
    .filter(({ selectedOptions }) => selectedOptions[0]?.defaultSelected === false)
    .map(({ name }) => name)

/** What is to be asked for as the form stands. */
export const wishOf = (form: HTMLFormElement): Wish =>
  wishFor(changedChoices(form), document.querySelector<HTMLDetailsElement>('#working')?.open === true)

/** Was anything put in that the page does not know, by a browser that gives back what was typed before? */
export const isTouched = (form: HTMLFormElement): boolean =>
  changedChoices(form).length > 0 || textsOf(form).some((one) => one.value !== one.defaultValue)

/** Lets a key that is waiting have its turn: an old phone takes its time over each of these steps. */
export const turn = () => new Promise((resolve) => setTimeout(resolve))

/**
 * Asks for the page that pressing the form's button would lead to and takes it apart, so that no figure can differ from
 * the one that the button gives.
 *
 * @throws where nothing comes back, or something else than the page
 */
export async function ask(address: string, wish: Wish, signal: AbortSignal): Promise<Answered> {
  const asked = new URL(address, location.href)
  asked.searchParams.set('show', wish)
  const response = await fetch(asked, { signal, headers: { accept: 'text/html' } })
  if (!response.ok) throw new Error(`answered ${response.status}`)
  const text = await response.text()
  await turn()
  signal.throwIfAborted()
  const page = new DOMParser().parseFromString(mainOf(text), 'text/html')
  await turn()
  signal.throwIfAborted()
  const form = page.querySelector<HTMLFormElement>('form.job-form')
  if (!form) throw new Error('answered with something else than the form')
  const sheet = page.getElementById('sheet')
  const faults = page.getElementById('faults')
  // In the place of the sheet it is told once, by the line above it, and takes nobody's focus.
  faults?.removeAttribute('role')
  faults?.remove()
  const first = sheet?.querySelector('.facts > div') ?? faults?.querySelector('.notice-title')
  return {
    form,
    address: sheet?.dataset.address,
    part: sheet ?? faults ?? undefined,
    notices: page.querySelector('.job-notices'),
    telling: [...(first?.children.length ? first.children : first ? [first] : [])]
      .map(({ textContent }) => textContent)
      .join(': '),
  }
}

/** What a page says, without what it brings for scripts: that is most of its length, and reading it takes a phone long. */
const mainOf = (html: string) => html.slice(html.indexOf('<main'), html.indexOf('</main>'))

/**
 * Draws the form as the answer has it: other fields, what was read in each, what is wrong.
 *
 * @param all also what was typed, where figures were converted or works moved up; else that stays as it is
 */
export function followForm(form: HTMLFormElement, answered: HTMLFormElement, all: boolean): void {
  followChildren(form, answered)
  for (const theirs of answered.elements) {
    const ours = form.elements.namedItem((theirs as HTMLInputElement).name)
    if (ours instanceof HTMLSelectElement) ours.value = (theirs as HTMLSelectElement).value
  }
  if (!all) return
  for (const one of textsOf(form)) if (one.value.trim() !== one.defaultValue) one.value = one.defaultValue
  for (const one of form.querySelectorAll<HTMLInputElement>('input[type=radio]'))
    one.checked = one.defaultChecked
}

/** Figures of fields that are gone with a kind of work, for when it is chosen again. */
export class Vanished {
  readonly #texts = new Map<string, string>()

  /** Takes up what stands in fields that the answer has no more. */
  take(form: HTMLFormElement, answered: HTMLFormElement): void {
    for (const { name, value } of textsOf(form))
      if (value.trim() !== '' && !answered.elements.namedItem(name)) this.#texts.set(name, value)
  }

  /** Puts back what stood in fields that were not there before. Says whether there was anything. */
  putBack(form: HTMLFormElement, before: ReadonlySet<string>): boolean {
    const back = textsOf(form).filter(({ name }) => !before.has(name) && this.#texts.has(name))
    for (const one of back) one.value = this.#texts.get(one.name) ?? one.value
    return back.length > 0
  }

  forget(): void {
    this.#texts.clear()
  }
}
