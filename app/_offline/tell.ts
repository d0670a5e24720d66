/** How long after a change the worker is asked to keep a page as it is now. */
const KEEP_MS = 10_000

/** The address of this page as it is kept. */
export const here = (): string => location.href.replace(/#.*/, '')

/** Has the worker keep a page anew: what was typed and saved since it was opened is not in its copy. */
export function watchCopy(): { readonly changed: () => void; readonly stop: () => void } {
  let timer: ReturnType<typeof setTimeout> | undefined
  const keep = () => {
    if (timer === undefined) return
    clearTimeout(timer)
    timer = undefined
    const opened = { kind: 'opened', address: here(), loaded: true, passed: false }
    navigator.serviceWorker?.controller?.postMessage(opened)
  }
  window.addEventListener('pagehide', keep)
  return {
    changed: () => {
      timer ??= setTimeout(keep, KEEP_MS)
    },
    stop: () => {
      clearTimeout(timer)
      window.removeEventListener('pagehide', keep)
    },
  }
}
