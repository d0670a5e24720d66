import { Client } from 'pg'
import { beforeAll, expect, it } from 'vitest'
import type { Member } from '#lib/access/actor.ts'
import { db } from '#lib/db/client.ts'
import type { CaseBody } from '#lib/entry/case.ts'
import { mergeBodies } from '#lib/entry/merge.ts'
import { EditConflict, type Submission, submit } from '#lib/workflow/submit.ts'
import { verify } from '#lib/workflow/verify.ts'
import { superuserUrl } from '../support/database.ts'
import { CONTRIBUTOR, makeCase, makeSubmission, makeWork, REFERENCES } from '../support/make.ts'

const WRITERS = 200
const ROUNDS = 2
/** Of the site; so many writers stand in the database at once, and the others before its door. */
const POOL = 40

const writer = (n: number): Member => ({ kind: 'member', key: `writer-${n}`, roles: ['contributor'] })

beforeAll(async () => {
  process.env.DATABASE_POOL = String(POOL)
  // They queue, and on a busy machine for minutes; no test is about that.
  process.env.DATABASE_CONNECT_MS = '120000'
  process.env.DATABASE_STATEMENT_MS = '300000'
  await submit(CONTRIBUTOR, makeSubmission({ kind: 'case', slug: 'crowded', body: makeCase() }), REFERENCES)
})

/** Holds the entry until the whole pool waits for it, then lets everybody go at once. */
async function atBarrier<T>(start: () => Promise<T>): Promise<T> {
  const gate = new Client({ connectionString: superuserUrl() })
  await gate.connect()
  try {
    await gate.query('BEGIN')
    await gate.query(`SELECT FROM "Entry" WHERE slug = 'crowded' FOR UPDATE`)
    const started = start()
    const waiting = `SELECT count(*)::int AS n FROM pg_stat_activity
      WHERE datname = current_database() AND wait_event_type = 'Lock'`
    for (let n = 0; n < POOL; n = (await gate.query(waiting)).rows[0].n) {
      // Else a transaction is told the same for as long as it lasts.
      await gate.query('SELECT pg_stat_clear_snapshot()')
      const ended = await Promise.race([
        started.then(() => true),
        new Promise((next) => setTimeout(next, 20)),
      ])
      if (ended === true) throw new Error('nobody waits at the barrier')
    }
    await gate.query('COMMIT')
    return await started
  } finally {
    await gate.end()
  }
}

it(`of ${WRITERS} writers at one barrier, again and again, each accepted edit is there and none is overwritten`, async () => {
  const bodyOf = (n: number, base: CaseBody): CaseBody => ({
    ...base,
    works: [...base.works, makeWork({ id: `work-of-${n}` })],
  })
  let drafts = Array.from({ length: WRITERS }, (_, n) => ({
    n,
    basedOn: 1,
    base: makeCase(),
    body: bodyOf(n, makeCase()),
  }))
  const accepted: { n: number; number: number; write: Submission }[] = []
  for (let round = 0; round < ROUNDS; round++) {
    const answers = await atBarrier(() =>
      Promise.all(
        drafts.map(async (draft) => {
          const { n, basedOn, body } = draft
          const write = makeSubmission({ kind: 'case', slug: 'crowded', basedOn, body })
          // Each is sent twice at once, as by a client that lost the answer.
          const both = await Promise.allSettled([1, 2].map(() => submit(writer(n), write, REFERENCES)))
          return { draft, write, both }
        }),
      ),
    )
    const next: typeof drafts = []
    for (const { draft, write, both } of answers) {
      const [first, second] = both
      if (first?.status === 'fulfilled' && second?.status === 'fulfilled') {
        expect(second.value.number).toBe(first.value.number)
        expect([first.value.repeated, second.value.repeated].sort()).toEqual([false, true])
        accepted.push({ n: draft.n, number: first.value.number, write })
        continue
      }
      for (const one of both)
        if (one.status === 'fulfilled' || !(one.reason instanceof EditConflict))
          throw new Error(`${draft.n}: ${one.status}`)
      const { theirs } = (second as PromiseRejectedResult).reason as EditConflict
      const { merged, conflicts } = mergeBodies(draft.base, theirs.body, draft.body)
      expect(conflicts).toEqual([])
      const base = theirs.body as CaseBody
      next.push({ n: draft.n, basedOn: theirs.number, base, body: merged as unknown as CaseBody })
    }
    expect(next).toHaveLength(WRITERS - round - 1)
    drafts = next
  }
  const stored = await db().revision.findMany({
    where: { entry: { slug: 'crowded' } },
    orderBy: { number: 'asc' },
  })
  expect(stored.map(({ number, basedOn }) => [number, basedOn])).toEqual([
    [1, null],
    ...accepted.map(({ number }) => [number, number - 1]),
  ])
  const works = (stored[ROUNDS]?.body as CaseBody | undefined)?.works.map(({ id }) => id)
  expect(works?.sort()).toEqual(['repointing', ...accepted.map(({ n }) => `work-of-${n}`)].sort())
  for (const { n, number, write } of accepted)
    expect(await submit(writer(n), write, REFERENCES)).toMatchObject({ number, repeated: true })
  expect((await verify('no-such-folder')).findings).toEqual([])
}, 600_000)
