/**
 * Lets a reader go before we have said all, as `npm run content | head` does: what we do goes on, unheard.
 * Without a listener Node ends the process on the pipe's fault.
 */
export function letReaderLeave(stream: NodeJS.WritableStream): void {
  stream.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code !== 'EPIPE') throw error
  })
}

/** One line for whoever started us. */
export const say = (line: string): void => console.log(line)

/** Says what is about to be done, does it, and says how long it took when that is worth knowing. */
export async function step<T>(title: string, work: () => Promise<T> | T): Promise<T> {
  say(title)
  const began = performance.now()
  const result = await work()
  const seconds = (performance.now() - began) / 1000
  if (seconds >= 0.5) say(`  done in ${seconds.toFixed(1)} s`)
  return result
}
