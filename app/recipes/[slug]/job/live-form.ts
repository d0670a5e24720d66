/** What the server answered to a form: where it is found, its sheet or what is to be mended, and its fields. */
export interface Answered {
  /** The address that holds it all, where there is a sheet. */
  readonly address: string | undefined
  readonly part: Element
  /** Its first figure in words, or how much is to be mended. */
  readonly telling: string
  readonly page: Document
}

/** What stands in a form, as its address would have it; blank fields are left out. */
function queryOf(form: HTMLFormElement): string {
  const query = new URLSearchParams()
  for (const [name, value] of new FormData(form))
    if (typeof value === 'string' && value.trim() !== '') query.append(name, value)
  return query.toString()
}

/** Does it ask for other fields than it shows? Then the server has to draw it anew, when it is told to. */
export const wantsOtherFields = (form: HTMLFormElement): boolean =>
  [...form.querySelectorAll<HTMLSelectElement>('select')].some(({ name, value, selectedOptions }) => {
    const changed = selectedOptions[0]?.defaultSelected === false
    return (
      changed && (name.startsWith('use') || name === 'units' || (name === 'sand' && value === 'measured'))
    )
  })

/** Was anything put in that the sheet does not know, by a browser that gives back what was typed before? */
export const isTouched = (form: HTMLFormElement): boolean =>
  [...form.querySelectorAll<HTMLInputElement>('input[type=text]')].some(
    (one) => one.value !== one.defaultValue,
  )

/** Lets a key that is waiting have its turn: an old phone takes its time over each of these steps. */
export const turn = () => new Promise((resolve) => setTimeout(resolve))

/**
 * Sends the form as pressing its button would and takes the answer apart, so that no figure can differ from the one
 * that the button gives.
 *
 * @throws where nothing comes back, or something else than the page
 */
export async function ask(form: HTMLFormElement, signal: AbortSignal): Promise<Answered> {
  const response = await fetch(`${form.action}?${queryOf(form)}`, {
    signal,
    headers: { accept: 'text/html' },
  })
  if (!response.ok) throw new Error(`answered ${response.status}`)
  const text = await response.text()
  await turn()
  signal.throwIfAborted()
  const page = new DOMParser().parseFromString(text, 'text/html')
  const sheet = page.getElementById('sheet')
  const part = sheet ?? page.getElementById('faults')
  if (!part) throw new Error('answered with neither a sheet nor what is to be mended')
  part.removeAttribute('autofocus')
  const first = part.querySelector(sheet ? '.facts > div' : '.notice-title')
  return {
    address: sheet ? response.url.replace(/#.*$/, '') : undefined,
    part,
    telling: [...(first?.children.length ? first.children : first ? [first] : [])]
      .map(({ textContent }) => textContent)
      .join(': '),
    page,
  }
}

const SAID = ['.field-error', '.field-echo', '.job-ask'] as const

/** Says at each field what the answer says there: what was read, what is wrong, which of two was meant. */
export function followFields(form: HTMLFormElement, page: Document): void {
  for (const input of form.querySelectorAll<HTMLInputElement>('input[type=text]')) {
    const theirs = page.getElementById(input.id)
    const [ours, answered] = [input.closest('.job-field'), theirs?.closest('.job-field')]
    if (!theirs || !ours || !answered) continue
    for (const name of ['aria-describedby', 'aria-invalid']) follow(input, theirs, name)
    follow(ours.firstElementChild, answered.firstElementChild, 'class')
    for (const part of SAID) followPart(ours, answered, part)
  }
}

/** What is the same is left alone: setting it again would have the page laid out again. */
function follow(ours: Element | null, theirs: Element | null, name: string): void {
  const value = theirs?.getAttribute(name) ?? null
  if (!ours || ours.getAttribute(name) === value) return
  if (value === null) ours.removeAttribute(name)
  else ours.setAttribute(name, value)
}

/** Radios that stand are left alone, so that the one in use keeps the focus. */
function followPart(ours: Element, answered: Element, part: (typeof SAID)[number]): void {
  const [there, wanted] = [ours.querySelector(part), answered.querySelector(part)]
  if (there && wanted) {
    if (part !== '.job-ask' && there.textContent !== wanted.textContent)
      there.textContent = wanted.textContent
  } else if (there) there.remove()
  else if (wanted) {
    const control = ours.querySelector('.field-control')
    const copy = document.importNode(wanted, true)
    if (part === '.field-error') control?.before(copy)
    else if (part === '.field-echo') control?.after(copy)
    else ours.append(copy)
  }
}
