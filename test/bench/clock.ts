/** Median time of one run, µs of processor time, so that a busy machine does not show. */
export function medianUs(run: () => void, times: number): number {
  for (let i = 0; i < times / 4; i++) run()
  const taken = Array.from({ length: times }, () => {
    const start = process.cpuUsage()
    run()
    const { user, system } = process.cpuUsage(start)
    return user + system
  }).sort((a, b) => a - b)
  return taken[times >> 1] ?? Number.NaN
}

/** Time of one draw, µs, from many in a row. */
export const perDrawUs = (run: (i: number) => void, draws = 100_000): number =>
  medianUs(() => {
    for (let i = 0; i < draws; i++) run(i)
  }, 9) / draws

/** Prints one line of results. */
export const row = (what: string, us: number, note = ''): void =>
  console.log(`${what.padEnd(44)}${us.toFixed(us < 10 ? 3 : 0).padStart(10)} µs  ${note}`)
