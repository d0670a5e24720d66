import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { type Running, supervise } from '#lib/cli/supervise.ts'

/** Something that runs until told to stop or to die. */
function makeRunning() {
  let end = () => {}
  const exited = new Promise<void>((resolve) => {
    end = resolve
  })
  const stop = vi.fn(async () => end())
  return { exited, stop, die: () => end() } satisfies Running & { die: () => void }
}

beforeEach(() => {
  vi.useFakeTimers()
  vi.spyOn(console, 'log').mockImplementation(() => {})
})
afterEach(() => vi.useRealTimers())

describe('supervise(name, first, start)', () => {
  it('starts a thing again when it dies, and says so', async () => {
    const first = makeRunning()
    const start = vi.fn(async () => makeRunning())
    supervise('The thing', first, start)
    first.die()
    await vi.advanceTimersByTimeAsync(0)
    expect(start).toHaveBeenCalledOnce()
    expect(vi.mocked(console.log).mock.calls.flat()).toEqual([
      'The thing stopped unexpectedly; starting it again',
      'The thing runs again',
    ])
  })

  it('leaves a thing alone that it was told to stop', async () => {
    const first = makeRunning()
    const start = vi.fn(async () => makeRunning())
    await supervise('The thing', first, start).stop()
    await vi.advanceTimersByTimeAsync(60_000)
    expect(first.stop).toHaveBeenCalledOnce()
    expect(start).not.toHaveBeenCalled()
  })

  it('stops the newest start, even one that is still coming up', async () => {
    const first = makeRunning()
    const second = makeRunning()
    const start = () => new Promise<Running>((resolve) => setTimeout(resolve, 1000, second))
    const kept = supervise('The thing', first, start)
    first.die()
    await vi.advanceTimersByTimeAsync(500)
    const stopped = kept.stop()
    await vi.advanceTimersByTimeAsync(500)
    await stopped
    expect(second.stop).toHaveBeenCalledOnce()
  })

  it('gives up on a thing that dies six times within a minute', async () => {
    const first = makeRunning()
    const start = vi.fn(async () => {
      const next = makeRunning()
      next.die()
      return next
    })
    const kept = supervise('The thing', first, start)
    first.die()
    await vi.advanceTimersByTimeAsync(60_000)
    expect(await kept.gaveUp).toBe('The thing stopped 6 times within a minute.')
    expect(start).toHaveBeenCalledTimes(5)
  })

  it('counts a start that fails as a death, and says why', async () => {
    const first = makeRunning()
    const kept = supervise('The thing', first, async () => {
      throw new Error('no room')
    })
    first.die()
    await vi.advanceTimersByTimeAsync(60_000)
    expect(await kept.gaveUp).toBe('The thing stopped 6 times within a minute.')
    expect(vi.mocked(console.log).mock.calls.flat()).toContain('no room')
  })

  it('does not give up on a thing that dies now and then', async () => {
    const things = Array.from({ length: 12 }, makeRunning)
    let at = 0
    const start = vi.fn(async () => things[++at] as Running)
    let gaveUp = false
    void supervise('The thing', things[0] as Running, start).gaveUp.then(() => {
      gaveUp = true
    })
    for (const thing of things.slice(0, 11)) {
      thing.die()
      await vi.advanceTimersByTimeAsync(30_000)
    }
    expect(start).toHaveBeenCalledTimes(11)
    expect(gaveUp).toBe(false)
  })
})
