import { say } from './say.ts'

/** Something that runs beside us until it is stopped or dies. */
export interface Running {
  exited: Promise<void>
  stop(): Promise<void>
}

/** A running thing that is started again when it dies. */
export interface Supervised {
  stop(): Promise<void>
  /** Settles, with words for the operator, only if it kept dying and we gave up. */
  gaveUp: Promise<string>
}

/** This many deaths within this time, and starting again is no help. */
const TOO_MANY = 6
const WITHIN_MS = 60_000

/**
 * Keeps one thing running: started again at once when it dies, then after longer and longer pauses.
 *
 * @param name as it stands at the start of a sentence, such as 'The database'
 */
export function supervise(name: string, first: Running, start: () => Promise<Running>): Supervised {
  let current: Promise<Running> = Promise.resolve(first)
  let stopping = false
  const watch = async (): Promise<string> => {
    const deaths: number[] = []
    for (;;) {
      await (await current).exited
      if (stopping) return new Promise(() => {})
      const now = performance.now()
      deaths.push(now)
      const recent = deaths.filter((at) => now - at < WITHIN_MS).length
      if (recent >= TOO_MANY) return `${name} stopped ${recent} times within a minute.`
      say(`${name} stopped unexpectedly; starting it again`)
      if (recent > 1) await new Promise((resume) => setTimeout(resume, 250 * 2 ** recent))
      if (stopping) return new Promise(() => {})
      current = start().then(
        (running) => {
          say(`${name} runs again`)
          return running
        },
        (error: Error) => {
          say(error.message)
          return { exited: Promise.resolve(), stop: async () => {} }
        },
      )
    }
  }
  return {
    gaveUp: watch(),
    stop: async () => {
      stopping = true
      await (await current).stop()
    },
  }
}
