import { setTimeout as sleep } from 'node:timers/promises'
import { uniformInt } from 'pure-rand/distribution/uniformInt'
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus'
import { closeDb, db } from '#lib/db/client.ts'
import { findBinaries } from '#lib/db/embedded/binaries.ts'
import { prepareCluster } from '#lib/db/embedded/cluster.ts'
import { isAlive, serverProcesses } from '#lib/db/embedded/processes.ts'
import { type EmbeddedServer, startServer } from '#lib/db/embedded/server.ts'
import { migrate } from '#lib/db/migrate/apply.ts'
import { Refusal } from '#lib/errors.ts'
import { type Submission, type Submitted, submit } from '#lib/workflow/submit.ts'
import { CONTRIBUTOR, makeSubmission, REFERENCES } from './make.ts'
import { newFolder } from './serve.ts'

const WRITERS = 6

/** What a whole run of kills came to. The first two must be empty, whatever was killed when. */
export interface CrashReport {
  /** Keys of writes that were acknowledged and are gone or changed after a restart. */
  lost: string[]
  /** Keys that stand in the record more than once, or that nobody was answered for in the end. */
  doubled: string[]
  /** Writes that were answered. */
  acknowledged: number
  /** Writes whose answer the kill cut off; each was repeated after the restart. */
  cutOff: number
  /** Of these, how many had been recorded all the same, so that repeating only told the first answer. */
  recordedUnheard: number
}

/**
 * Kills the private server, all its processes at once, at seeded moments while writers submit; starts it again,
 * has the cut-off writes repeated, and looks whether everything acknowledged is there, once.
 */
export async function crashRounds(
  rounds: number,
  seed: number,
  say = (_: string) => {},
): Promise<CrashReport> {
  const random = xoroshiro128plus(seed)
  const pick = (least: number, most: number) => uniformInt(random, least, most)
  const cluster = prepareCluster(newFolder('putlog-crash-'), findBinaries('package'))
  let server = await startServer(cluster)
  await migrate(server.url('putlog'))
  process.env.DATABASE_URL = server.url('putlog')
  const acknowledged = new Map<string, Submitted>()
  const report: CrashReport = { lost: [], doubled: [], acknowledged: 0, cutOff: 0, recordedUnheard: 0 }
  try {
    for (let round = 1; round <= rounds; round += 1) {
      const killing = new AbortController()
      const writers = Array.from({ length: WRITERS }, (_, writer) =>
        writeUntil(killing.signal, `r${round}-w${writer}`, acknowledged),
      )
      await sleep(pick(5, 400))
      await killAll(server)
      killing.abort()
      const cutOff = (await Promise.all(writers)).flat()
      server = await startServer(cluster)
      await check(acknowledged, false, report)
      for (const write of cutOff) {
        const answer = await submit(CONTRIBUTOR, write, REFERENCES)
        acknowledged.set(write.key, answer)
        if (answer.repeated) report.recordedUnheard += 1
      }
      report.cutOff += cutOff.length
      await check(acknowledged, true, report)
      say(`round ${round}: ${acknowledged.size} acknowledged, ${cutOff.length} cut off and repeated`)
    }
    return { ...report, acknowledged: acknowledged.size }
  } finally {
    await closeDb()
    await server.stop()
  }
}

/** Submits new entries and further revisions of them in turn until told to stop; resolves with what got no answer. */
async function writeUntil(
  stop: AbortSignal,
  name: string,
  acknowledged: Map<string, Submitted>,
): Promise<Submission[]> {
  for (let count = 0; !stop.aborted; count += 1) {
    const write = makeSubmission({
      key: crypto.randomUUID(),
      slug: `${name}-${Math.floor(count / 3)}`,
      basedOn: count % 3 === 0 ? null : count % 3,
    })
    try {
      acknowledged.set(write.key, await submit(CONTRIBUTOR, write, REFERENCES))
    } catch (error) {
      if (error instanceof Refusal) throw error
      return [write]
    }
  }
  return []
}

async function killAll(server: EmbeddedServer): Promise<void> {
  const processes = serverProcesses(server.pid)
  for (const pid of processes) {
    try {
      process.kill(pid, 'SIGKILL')
    } catch (error) {
      // A session may have ended between listing and killing.
      if ((error as NodeJS.ErrnoException).code !== 'ESRCH') throw error
    }
  }
  await server.exited
  while (processes.some(isAlive)) await sleep(5)
}

/** Once the cut-off writes are repeated, every row must be one that was answered. */
async function check(
  acknowledged: ReadonlyMap<string, Submitted>,
  repeated: boolean,
  report: CrashReport,
): Promise<void> {
  const rows = await db().revision.findMany({ select: { key: true, digest: true, number: true } })
  const byKey = new Map(rows.map((row) => [row.key, row]))
  for (const [key, answer] of acknowledged) {
    const row = byKey.get(key)
    if (row?.digest !== answer.digest || row.number !== answer.number) report.lost.push(key)
  }
  if (!repeated) return
  const seen = new Set<string>()
  for (const { key } of rows) {
    if (seen.has(key) || !acknowledged.has(key)) report.doubled.push(key)
    seen.add(key)
  }
}
