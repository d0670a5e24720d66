/**
 * Puts text into the fields of a form that stand as its writer left them; what stands otherwise by now is left alone.
 *
 * @param changes field → what stood there, and what is to stand there; of boxes to tick, one value to a line
 */
export function restoreTyped(
  form: HTMLFormElement,
  changes: Readonly<Record<string, { readonly was: string; readonly is: string }>>,
): void {
  for (const [name, { was, is }] of Object.entries(changes)) {
    const now = new FormData(form).getAll(name).join('\n').replace(/\r\n?/g, '\n')
    if (now !== was) continue
    for (const control of form.elements) if ('name' in control && control.name === name) put(control, is)
  }
}

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
