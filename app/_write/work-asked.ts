/**
 * Stands a visit's form at the work that its page was opened for, as a page drawn for that work does: a copy of the form was
 * kept for visits to any of the case's works. A choice that is there already stays.
 */
export function standAtWork(form: HTMLFormElement, work: string): void {
  const control = form.elements.namedItem('work')
  const shown = form.elements.namedItem(':was')
  if (!(control instanceof HTMLSelectElement) || !(shown instanceof HTMLInputElement)) return
  if (control.value !== '' || ![...control.options].some(({ value }) => value === work)) return
  control.value = work
  shown.value = JSON.stringify({ ...JSON.parse(shown.value), work })
}
