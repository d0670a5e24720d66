/** What a list without a blank line stands at until somebody chooses. */
const NOT_RECORDED = 'not-recorded'

/**
 * Puts text into the fields of a form that stand as its writer left them; what stands otherwise by now is left alone.
 *
 * @param changes field → what stood there, and what is to stand there; of boxes to tick, one value to a line
 * @param settled fields that hold a text already, which are left alone; those that are put in here are added
 */
export function restoreTyped(
  form: HTMLFormElement,
  changes: Readonly<Record<string, { readonly was: string; readonly is: string }>>,
  settled: Set<string>,
): void {
  for (const [name, { was, is }] of Object.entries(changes)) {
    if (settled.has(name)) continue
    const now = new FormData(form).getAll(name).join('\n').replace(/\r\n?/g, '\n')
    const controls = [...form.elements].filter((one) => 'name' in one && one.name === name)
    if (now !== was && !(was === '' && controls.some(isUnchosen))) continue
    for (const control of controls) put(control, is)
    settled.add(name)
  }
}

/** Whether a list stands at "not recorded" because nobody chose yet: the page had no text for it, and drew that. */
const isUnchosen = (control: Element): boolean =>
  control instanceof HTMLSelectElement &&
  control.value === NOT_RECORDED &&
  control.selectedOptions[0]?.defaultSelected === true

function put(control: Element, text: string): void {
  if (control instanceof HTMLInputElement && /^(?:checkbox|radio)$/.test(control.type))
    control.checked = text.split('\n').includes(control.value)
  else if (
    control instanceof HTMLInputElement ||
    control instanceof HTMLTextAreaElement ||
    control instanceof HTMLSelectElement
  )
    control.value = text
}
