import { allWorks, countWithdrawn, sharedReadings, worksOf } from '#lib/db/evidence/works.ts'
import { latestChange } from '#lib/db/search/read.ts'
import { DAMP_STATES, JOINT_STATES, UNIT_STATES } from '#lib/entry/terms.ts'
import { Refusal } from '#lib/errors.ts'
import { type Known, keepOne } from './kept.ts'
import { type SharedVisit, sharedKey, WorkColumns } from './works-columns.ts'

/** The works of the record as this process knows them, up to a change of that number. */
export interface KnownWorks {
  readonly columns: WorkColumns
  readonly change: number
  /** Entries withdrawn from the whole record. */
  readonly withdrawn: { readonly cases: number; readonly visits: number }
}

class KeptWorks implements KnownWorks, Known {
  columns = new WorkColumns()
  change = 0
  withdrawn = { cases: 0, visits: 0 }

  async readAll(): Promise<void> {
    // Read first: what changes meanwhile has a higher number and is read again.
    const change = await latestChange()
    const withdrawn = await countWithdrawn()
    const columns = new WorkColumns()
    const shared = await readShared('all')
    for await (const piece of allWorks()) columns.add(piece, shared)
    Object.assign(this, { columns, change, withdrawn })
  }

  async takeOver(changed: readonly number[], latest: number): Promise<void> {
    const withdrawn = await countWithdrawn()
    const shared = await readShared(changed)
    const works = await worksOf([...new Set(changed)])
    // In one go, so that nobody counts a work twice or not at all.
    this.columns.drop(new Set(changed))
    this.columns.add(works, shared)
    Object.assign(this, { change: latest, withdrawn })
  }
}

async function readShared(documents: readonly number[] | 'all'): Promise<Map<string, SharedVisit[]>> {
  const byWork = new Map<string, SharedVisit[]>()
  for (const { document, work, on, read } of await sharedReadings(documents)) {
    const key = sharedKey(document, work)
    const own = byWork.get(key)
    if (own === undefined) byWork.set(key, [stepsOf(on, read)])
    else own.push(stepsOf(on, read))
  }
  return byWork
}

function stepsOf(on: number, read: readonly string[]): SharedVisit {
  const states = read.map((one) => one.split(' '))
  const steps = (scale: readonly string[], place: number) =>
    states.map((one) => scale.indexOf(one[place] ?? ''))
  return { on, joint: steps(JOINT_STATES, 0), unit: steps(UNIT_STATES, 1), damp: steps(DAMP_STATES, 2) }
}

const kept = keepOne('works', () => new KeptWorks())

/** So long a question waits for the works to be read, after a start. */
const PATIENCE_MS = 30_000

/**
 * The works as they were after a change or later, read once per process and kept current.
 *
 * @param change number of the change that must be in them
 * @throws Refusal `unavailable` while a great record is still being read after a start
 */
export const knownWorks = (change: number): Promise<KnownWorks> => kept.current(change, inTime)

/** Lets go of what was read; the next question reads it again. */
export const forgetWorks = kept.forget

async function inTime(reading: Promise<void>): Promise<void> {
  let timer: NodeJS.Timeout | undefined
  const late = new Promise<never>((_, refuse) => {
    timer = setTimeout(() => {
      refuse(
        new Refusal('unavailable', 'The record is still being read after a start. Try again in a minute.'),
      )
    }, PATIENCE_MS)
  })
  try {
    await Promise.race([reading, late])
  } finally {
    clearTimeout(timer)
  }
}
