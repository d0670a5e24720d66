import { Client } from 'pg'
import { describe, expect, it } from 'vitest'
import { db } from '#lib/db/client.ts'
import { publishing } from '#lib/db/publishing.ts'
import { decide } from '#lib/workflow/decide.ts'
import { submit } from '#lib/workflow/submit.ts'
import { CONTRIBUTOR, makeSubmission, REFERENCES, REVIEWER, verdictOn } from '../support/make.ts'

describe('publishing(work)', () => {
  it('leaves connections to readers, however many wait to publish', async () => {
    const waiting = await Promise.all(
      Array.from({ length: 15 }, (_, n) =>
        submit(CONTRIBUTOR, makeSubmission({ slug: `queued-${n}` }), REFERENCES),
      ),
    )
    // Another server publishes and takes its time: it holds the lock that all publishing waits for.
    const other = new Client({ connectionString: process.env.DATABASE_URL })
    await other.connect()
    await other.query('SELECT pg_advisory_lock(7310417)')
    const decided = Promise.all(waiting.map((submitted) => decide(REVIEWER, verdictOn(submitted))))
    // The pool has ten connections; were each held by one that waits, no reader would be answered before the lock goes.
    const read = await Promise.all(
      Array.from({ length: 9 }, () => db().$queryRaw<{ one: number }[]>`SELECT 1 AS one`),
    )
    expect(read.map(([row]) => row?.one)).toEqual(Array(9).fill(1))
    const still = await db().entry.count({ where: { publishedRevisionId: { not: null } } })
    expect(still).toBe(0)
    await other.query('SELECT pg_advisory_unlock(7310417)')
    await other.end()
    expect((await decided).map(({ outcome }) => outcome)).toEqual(Array(15).fill('publish'))
  })

  it('goes on after one that failed', async () => {
    const failing = publishing(async () => {
      throw new Error('it failed')
    })
    const next = publishing(async () => 'done')
    await expect(failing).rejects.toThrow('it failed')
    expect(await next).toBe('done')
  })
})
