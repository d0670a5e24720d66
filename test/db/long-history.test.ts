import { setTimeout as sleep } from 'node:timers/promises'
import { beforeAll, describe, expect, it } from 'vitest'
import type { Member } from '#lib/access/actor.ts'
import { adaptationTree } from '#lib/db/adaptations.ts'
import { authorsBehind, writersOf } from '#lib/db/authors.ts'
import { closeDb, db } from '#lib/db/client.ts'
import { openDisputes } from '#lib/db/disputes.ts'
import { likelyDuplicates } from '#lib/db/duplicates.ts'
import { noticesFor } from '#lib/db/notices.ts'
import { similarPhotos } from '#lib/db/photo-likeness.ts'
import { ownPhotos, photoState } from '#lib/db/photos.ts'
import { remindersOf } from '#lib/db/reminders.ts'
import { disputedNow, waitingRevisions } from '#lib/db/review.ts'
import { entryHead, versionsOf } from '#lib/db/versions.ts'
import { exportAccount } from '#lib/workflow/account-export.ts'
import { removePhoto } from '#lib/workflow/photo-remove.ts'
import { makeCase } from '../support/make.ts'

const ENTRIES = 20_000
const MASON: Member = { kind: 'member', key: 'p-7', roles: ['contributor', 'reviewer'] }
const UNKNOWN = '00000000-0000-7000-8000-000000000000'

/** A record of many entries, made up in the database: nobody verifies it. */
beforeAll(async () => {
  const run = (sql: string) => db().$executeRawUnsafe(sql)
  await run(`INSERT INTO "Entry" (id, kind, slug) SELECT gen_random_uuid(), 'case', 'case-' || i
    FROM generate_series(1, ${ENTRIES}) i`)
  await run(`INSERT INTO "Revision" (id, "entryId", number, body, "bodyDigest", shape, note, "authorKey", state,
      "createdAt", digest, key)
    SELECT gen_random_uuid(), id, 1, jsonb_build_object('title', slug), repeat('a', 64), 1, 'x',
      'p-' || (split_part(slug, '-', 2)::int % 500), 'published', now(), repeat('b', 64), gen_random_uuid() FROM "Entry"`)
  await run(`UPDATE "Entry" e SET "publishedRevisionId" = r.id FROM "Revision" r WHERE r."entryId" = e.id`)
  await run(`INSERT INTO "Decision" (id, "entryId", "revisionId", number, outcome, "reviewerKey", checklist, words, at,
      digest, key)
    SELECT gen_random_uuid(), r."entryId", r.id, 1, 'publish', 'p-' || (row_number() OVER () % 500), '{}', 'x', now(),
      repeat('c', 64), gen_random_uuid() FROM "Revision" r`)
  await run(`INSERT INTO "Decision" (id, "entryId", "revisionId", number, outcome, "reviewerKey", checklist, words, at,
      digest, key)
    SELECT gen_random_uuid(), r."entryId", r.id, 2, 'dispute', 'p-9', '{}', 'x', now(), repeat('d', 64),
      gen_random_uuid() FROM "Revision" r ORDER BY r."bodyDigest", r.id LIMIT 30`)
  await run(`INSERT INTO "CaseIndex" ("entryId", slug, revision, title, summary, country, region, units, wall, uses,
      invented, "publishedAt", visits, "yearsWatched", structure, "drivingRain", frost, ground, salts, families, methods,
      recipes, rows, materials)
    SELECT id, slug, 1, slug, '', 'EE', 'Region ' || (split_part(slug, '-', 2)::int % 40), '{limestone}',
      'rubble-coursed', '{}', true, now(), 0, -1, '', '', '', '', '{}', '{}', '{}', '{}', '{}', '{}' FROM "Entry"`)
  await run(`INSERT INTO "WorkIndex" ("caseEntryId", work, use, started, finished)
    SELECT id, 'repointing', 'pointing', '2010-05', '2010-06' FROM "Entry"`)
  await run(`INSERT INTO "Notice" (id, "forKey", what, "entryId", number, at)
    SELECT gen_random_uuid(), 'p-' || (split_part(slug, '-', 2)::int % 500), 'published', id, 1, now() FROM "Entry"`)
  await run(`INSERT INTO "Reminder" (id, "ownerKey", "caseEntryId", work, "dueOn", "createdAt")
    SELECT gen_random_uuid(), 'p-' || (split_part(slug, '-', 2)::int % 500), id, 'repointing', current_date, now()
    FROM "Entry"`)
  await run(`INSERT INTO "Photo" (sha256, width, height, bytes, sizes, likeness, "madeFrom", uploaders, "createdAt")
    SELECT encode(sha256(i::text::bytea), 'hex'), 1, 1, 1, '{1}', substr(md5(i::text), 1, 16),
      encode(sha256(('x' || i)::bytea), 'hex'), ARRAY['p-' || (i % 50)], now() FROM generate_series(1, 2000) i`)
  for (const table of [
    'Entry',
    'Revision',
    'Decision',
    'CaseIndex',
    'WorkIndex',
    'Notice',
    'Reminder',
    'Photo',
  ])
    await run(`VACUUM ANALYZE "${table}"`)
})

/** Rows of history that were read one after the other, of all that was asked so far. */
async function readInOrder(): Promise<Record<string, number>> {
  // A connection tells what it did when it ends, at the latest.
  await closeDb()
  await sleep(400)
  const rows = await db().$queryRaw<{ name: string; count: bigint }[]>`
    SELECT relname AS name, seq_tup_read AS count FROM pg_stat_user_tables
    WHERE relname IN ('Entry', 'Revision', 'Decision', 'CaseIndex', 'WorkIndex', 'Notice', 'Reminder')`
  return Object.fromEntries(rows.map(({ name, count }) => [name, Number(count)]))
}

const exported = async () => {
  for await (const _ of exportAccount({ actor: MASON, accountId: UNKNOWN }));
}
const anyEntry = async () => (await db().entry.findFirstOrThrow({ where: { slug: 'case-77' } })).id
const aPhoto = async () =>
  (await db().photo.findFirstOrThrow({ where: { uploaders: { has: MASON.key } } })).sha256

describe('with a long history', () => {
  it.each<[string, () => Promise<unknown>]>([
    ['one’s own photos', () => ownPhotos(MASON)],
    ['a photo', async () => photoState(MASON, await aPhoto())],
    ['photos that look alike', async () => similarPhotos(await aPhoto())],
    ['deleting a photo', async () => removePhoto(MASON, await aPhoto())],
    ['likely duplicates', async () => likelyDuplicates(await anyEntry(), makeCase(), MASON.key)],
    ['the open disputes of an entry', async () => openDisputes(await anyEntry())],
    ['all open disputes', disputedNow],
    ['what waits', () => waitingRevisions()],
    ['who wrote it', async () => writersOf(await anyEntry())],
    ['whose words it holds', async () => authorsBehind(await anyEntry(), 1)],
    ['what it was adapted from', async () => adaptationTree(await anyEntry())],
    ['notices', () => noticesFor(MASON.key)],
    ['visits due', () => remindersOf(MASON.key)],
    [
      'the versions of an entry',
      async () => {
        const head = await entryHead(MASON, 'case-77')
        return head && versionsOf(MASON, head)
      },
    ],
    ['one’s own data', exported],
  ])('%s: asked without reading it from one end to the other', async (_, ask) => {
    const before = await readInOrder()
    await ask()
    const after = await readInOrder()
    const read = Object.entries(after).filter(([name, count]) => count - (before[name] ?? 0) >= ENTRIES)
    expect(read).toEqual([])
  })
})
