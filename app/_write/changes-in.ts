import type { Changes } from './send-changes.ts'

/**
 * What a form holds that its page did not show.
 *
 * @param was field → what the page showed; blank where it is left out
 * @param proposed field → what the page put into a blank field: it was typed by nobody
 */
export function changesIn(
  form: HTMLFormElement,
  was: Readonly<Record<string, string>>,
  proposed: Readonly<Record<string, string>>,
): Changes {
  const data = new FormData(form)
  const names = new Set([...Object.keys(was), ...data.keys()].filter((name) => !/^[:$]/.test(name)))
  return Object.fromEntries(
    [...names].flatMap((name) => {
      const is = data.getAll(name).join('\n').replace(/\r\n?/g, '\n')
      const before = was[name] ?? ''
      const ours = before === '' && is === proposed[name]
      return is === before || ours ? [] : [[name, { was: before, is }]]
    }),
  )
}
