import { createHash } from 'node:crypto'
import { existsSync, readdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { Readable } from 'node:stream'
import { buffer } from 'node:stream/consumers'
import { setTimeout as sleep } from 'node:timers/promises'
import sharp from 'sharp'
import { v7 } from 'uuid'
import { beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { GUEST, type Member } from '#lib/access/actor.ts'
import { closeDb, db } from '#lib/db/client.ts'
import { noticesFor } from '#lib/db/notices.ts'
import { similarPhotos } from '#lib/db/photo-likeness.ts'
import { ownPhotos, photoFacts, photoState } from '#lib/db/photos.ts'
import type { VisitBody } from '#lib/entry/visit.ts'
import { readSettings } from '#lib/env.ts'
import { Refusal } from '#lib/errors.ts'
import { encodePhoto } from '#lib/photos/encode.ts'
import { nameOf, photoStore } from '#lib/photos/store.ts'
import { backup } from '#lib/workflow/backup.ts'
import { type DemoEntry, readDemo } from '#lib/workflow/demo-files.ts'
import { loadDemoPhotos, readDemoPhotos } from '#lib/workflow/demo-photos.ts'
import { erasePhoto } from '#lib/workflow/erase.ts'
import { erasePhotoIn, removePhotoFiles } from '#lib/workflow/photo-erase.ts'
import { isStored, storePicture } from '#lib/workflow/photo-files.ts'
import { removeFilesOfNone, removePhoto } from '#lib/workflow/photo-remove.ts'
import { addPhoto } from '#lib/workflow/photo-rows.ts'
import { sweepUploads } from '#lib/workflow/photo-sweep.ts'
import {
  appendUpload,
  beginUpload,
  giveUpUpload,
  readUpload,
  WrongOffset,
} from '#lib/workflow/photo-upload.ts'
import { claimJob, workOn, workPhotos } from '#lib/workflow/photo-work.ts'
import { restoreBackup } from '#lib/workflow/restore-backup.ts'
import { submit, submitIn } from '#lib/workflow/submit.ts'
import { verify } from '#lib/workflow/verify.ts'
import { withdraw } from '#lib/workflow/withdraw.ts'
import { jpeg as anyJpeg, bomb, heavy, telephonePicture } from '#test/photos/pictures.ts'
import { copyTemplate } from '#test/support/database.ts'
import {
  CONTRIBUTOR,
  makeCase,
  makeSubmission,
  makeVisit,
  OTHER,
  publish,
  REFERENCES,
  REVIEWER,
  STEWARD,
} from '#test/support/make.ts'

let dataDir = ''
beforeAll(() => {
  dataDir = readSettings().dataDir
})

/** Small, since the work on them takes the time here. */
const jpeg = ({ seed }: { seed: number }) => anyJpeg({ seed, width: 640, height: 480 })

const sha256 = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest('hex')
const waiting = () => readdirSync(join(dataDir, 'photos-waiting'))

/** A body that arrives in chunks and may break off before its end. */
async function* body(bytes: Uint8Array, { cutAt = Number.POSITIVE_INFINITY, chunk = 4096 } = {}) {
  for (let at = 0; at < bytes.length; at += chunk) {
    if (at >= cutAt) throw new Error('the connection is gone')
    yield bytes.subarray(at, Math.min(at + chunk, cutAt, bytes.length))
  }
}

async function send(file: Buffer, actor: Member = CONTRIBUTOR, keepDate = false) {
  const key = v7()
  await beginUpload(actor, { key, size: file.length, sha256: sha256(file), keepDate })
  await appendUpload(actor, key, 0, body(file))
  await workPhotos()
  return readUpload(actor, key)
}

const shaOf = async (file: Buffer, actor: Member = CONTRIBUTOR) => {
  const { photo } = await send(file, actor)
  if (photo === null) throw new Error('no picture came of it')
  return photo.sha256
}

const fault = (code: string) => expect.objectContaining({ faults: [expect.objectContaining({ code })] })

describe('an upload', () => {
  it('becomes a picture: kept and in every width, without a trace of where it was taken', async () => {
    const { state, known, photo } = await send(await telephonePicture({ seed: 20 }), CONTRIBUTOR, true)
    expect({ state, known }).toEqual({ state: 'ready', known: false })
    expect(photo).toMatchObject({ width: 1200, height: 1600, sizes: [320, 768, 1200], takenOn: '2024-06-30' })
    const name = photo?.sha256 ?? ''
    for (const width of photo?.sizes ?? []) {
      const got = await photoStore().get(nameOf.screen(name, width, 'webp'))
      const read = await sharp(await buffer(got?.stream ?? Readable.from([]))).metadata()
      expect([read.width, read.exif]).toEqual([width, undefined])
    }
    const kept = await photoStore().get(nameOf.kept(name))
    expect(sha256(await buffer(kept?.stream ?? Readable.from([])))).toBe(name)
    expect(readdirSync(join(dataDir, 'photos', 'uploads'))).toEqual([])
    expect(waiting()).toEqual([])
  })

  it('drops the camera’s day too, unless its sender agrees', async () => {
    const { photo } = await send(await telephonePicture({ seed: 21, width: 640, height: 480 }))
    expect(photo?.takenOn).toBeNull()
    expect(await db().photo.count({ where: { sha256: photo?.sha256 ?? '', takenOn: { not: null } } })).toBe(0)
  })

  it('of 25 MB goes through in one piece, and a byte more is refused before it is sent', async () => {
    const file = await heavy(24.9)
    expect(file.length).toBeGreaterThan(24.8 * 1024 * 1024)
    expect(await send(file)).toMatchObject({ state: 'ready', size: file.length, offset: file.length })
    const larger = { key: v7(), size: 25 * 1024 * 1024 + 1 }
    await expect(beginUpload(CONTRIBUTOR, larger)).rejects.toEqual(fault('photo-too-large'))
    await expect(beginUpload(CONTRIBUTOR, { key: v7(), size: 0 })).rejects.toEqual(fault('photo-empty'))
  })

  it('goes on after a cut where it broke off, and answers a repeated key with how far it came', async () => {
    const file = await jpeg({ seed: 22 })
    const begun = { key: v7(), size: file.length, sha256: sha256(file) }
    expect(await beginUpload(CONTRIBUTOR, begun)).toMatchObject({ state: 'receiving', offset: 0 })
    const cut = await appendUpload(CONTRIBUTOR, begun.key, 0, body(file, { cutAt: 10_000 }))
    expect(cut).toMatchObject({ state: 'receiving', offset: 10_000 })
    expect(await beginUpload(CONTRIBUTOR, begun)).toMatchObject({ state: 'receiving', offset: 10_000 })
    const elsewhere = appendUpload(CONTRIBUTOR, begun.key, 64, body(file.subarray(64)))
    await expect(elsewhere).rejects.toMatchObject({ name: 'WrongOffset', offset: 10_000, code: 'conflict' })
    await appendUpload(CONTRIBUTOR, begun.key, 10_000, body(file.subarray(10_000)))
    await workPhotos()
    expect(await beginUpload(CONTRIBUTOR, begun)).toMatchObject({ state: 'ready', offset: file.length })
    // The last bytes sent again, because their answer was lost: the same answer.
    expect(await appendUpload(CONTRIBUTOR, begun.key, file.length, body(Buffer.alloc(0)))).toMatchObject({
      state: 'ready',
    })
  })

  it('takes only one of two bodies that race for the same place', async () => {
    const file = await jpeg({ seed: 23 })
    const key = v7()
    await beginUpload(CONTRIBUTOR, { key, size: file.length, sha256: sha256(file) })
    const racers = await Promise.allSettled(
      Array.from({ length: 4 }, () => appendUpload(CONTRIBUTOR, key, 0, body(file))),
    )
    expect(racers.filter(({ status }) => status === 'fulfilled')).toHaveLength(1)
    for (const racer of racers)
      if (racer.status === 'rejected') expect(racer.reason).toBeInstanceOf(WrongOffset)
    await workPhotos()
    expect(await readUpload(CONTRIBUTOR, key)).toMatchObject({ state: 'ready' })
    expect(waiting()).toEqual([])
  })

  it.each([
    ['no picture', async () => Buffer.from('a wall of words'), 'photo-kind'],
    ['a bomb', async () => bomb(20_000), 'photo-too-many-pixels'],
    ['cut off', async () => (await jpeg({ seed: 24 })).subarray(0, 9000), 'photo-cut-off'],
  ])('that is %s is refused, saying so', async (_what, make, code) => {
    expect(await send(await make())).toMatchObject({
      state: 'refused',
      photo: null,
      fault: { field: 'photo', code },
    })
  })

  it('whose bytes are not those announced is refused', async () => {
    const [file, other] = [await jpeg({ seed: 25 }), await jpeg({ seed: 26 })]
    const key = v7()
    await beginUpload(CONTRIBUTOR, { key, size: file.length, sha256: sha256(other) })
    await appendUpload(CONTRIBUTOR, key, 0, body(file))
    await workPhotos()
    expect(await readUpload(CONTRIBUTOR, key)).toMatchObject({
      state: 'refused',
      fault: { code: 'photo-digest' },
    })
  })

  it('that runs over what was announced is refused and leaves nothing', async () => {
    const file = await jpeg({ seed: 27 })
    const key = v7()
    await beginUpload(CONTRIBUTOR, { key, size: file.length - 1 })
    await expect(appendUpload(CONTRIBUTOR, key, 0, body(file))).rejects.toEqual(fault('photo-too-long'))
    expect(await readUpload(CONTRIBUTOR, key)).toMatchObject({ state: 'receiving', offset: 0 })
    expect(waiting()).toEqual([])
  })

  it('is its sender’s alone', async () => {
    const key = v7()
    await beginUpload(CONTRIBUTOR, { key, size: 10 })
    await expect(readUpload(OTHER, key)).rejects.toMatchObject({ code: 'not-found' })
    await expect(appendUpload(OTHER, key, 0, body(Buffer.alloc(10)))).rejects.toMatchObject({
      code: 'not-found',
    })
    await expect(giveUpUpload(OTHER, key)).rejects.toMatchObject({ code: 'not-found' })
    await expect(beginUpload(OTHER, { key, size: 10 })).rejects.toMatchObject({ code: 'conflict' })
    for (const nobody of [GUEST, STEWARD])
      await expect(beginUpload(nobody, { key: v7(), size: 10 })).rejects.toMatchObject({ code: 'forbidden' })
  })

  it('that is given up, or that nobody touched for a week, leaves nothing', async () => {
    const [given, old] = [v7(), v7()]
    for (const key of [given, old]) {
      await beginUpload(CONTRIBUTOR, { key, size: 1000 })
      await appendUpload(CONTRIBUTOR, key, 0, body(Buffer.alloc(600)))
    }
    await giveUpUpload(CONTRIBUTOR, given)
    await db().upload.update({
      where: { key: old },
      data: { touchedAt: new Date(Date.now() - 8 * 86_400_000) },
    })
    await sweepUploads()
    for (const key of [given, old])
      await expect(readUpload(CONTRIBUTOR, key)).rejects.toMatchObject({ code: 'not-found' })
    expect(readdirSync(join(dataDir, 'photos', 'uploads'))).toEqual([])
  })
})

describe('a picture sent before', () => {
  it('need not be sent again by the same person', async () => {
    const file = await jpeg({ seed: 30 })
    const first = await send(file)
    const again = await beginUpload(CONTRIBUTOR, { key: v7(), size: file.length, sha256: sha256(file) })
    expect(again).toMatchObject({ state: 'ready', known: true, photo: { sha256: first.photo?.sha256 } })
  })

  it('is stored once, told as known, and theirs too when another sends it', async () => {
    const file = await jpeg({ seed: 31 })
    const first = await send(file)
    const other = await send(file, OTHER)
    expect(other).toMatchObject({ state: 'ready', known: true, photo: { sha256: first.photo?.sha256 } })
    expect((await ownPhotos(OTHER)).map((photo) => photo.sha256)).toContain(first.photo?.sha256)
    expect(await db().photo.count({ where: { sha256: first.photo?.sha256 ?? '' } })).toBe(1)
  })

  it('cannot be had from its digest alone by one who never sent it', async () => {
    const file = await jpeg({ seed: 32 })
    await send(file)
    const claimed = await beginUpload(OTHER, { key: v7(), size: file.length, sha256: sha256(file) })
    expect(claimed).toMatchObject({ state: 'receiving', offset: 0, photo: null })
  })
})

describe('workers', () => {
  const wait = async (seed: number) => {
    const file = await jpeg({ seed })
    const key = v7()
    await beginUpload(CONTRIBUTOR, { key, size: file.length })
    await appendUpload(CONTRIBUTOR, key, 0, body(file))
    return key
  }
  const expire = (uploadKey: string) =>
    db().photoJob.update({ where: { uploadKey }, data: { leasedUntil: new Date(Date.now() - 1000) } })

  beforeEach(async () => {
    await workPhotos()
  })

  it('that race are given one job each, and none twice', async () => {
    const keys = await Promise.all([wait(40), wait(41), wait(42)])
    const claims = await Promise.all(Array.from({ length: 8 }, () => claimJob()))
    const given = claims.flatMap((claim) => claim?.uploadKey ?? [])
    expect(given.sort()).toEqual([...keys].sort())
    for (const claim of claims) if (claim) await workOn(claim)
    expect(await db().photoJob.count()).toBe(0)
  })

  it('take over what another left, whose late end then changes nothing', async () => {
    const key = await wait(43)
    const first = await claimJob()
    expect(await claimJob()).toBeNull()
    await expire(key)
    const second = await claimJob()
    if (first === null || second === null) throw new Error('both should have had it')
    expect(second).toMatchObject({ uploadKey: key, attempts: 2 })
    await workOn(first)
    expect(await readUpload(CONTRIBUTOR, key)).toMatchObject({ state: 'waiting' })
    await workOn(second)
    expect(await readUpload(CONTRIBUTOR, key)).toMatchObject({ state: 'ready' })
  })

  it('give up a file that brought down three of them', async () => {
    const key = await wait(44)
    for (let times = 0; times < 3; times += 1) {
      await claimJob()
      await expire(key)
    }
    await workPhotos()
    expect(await readUpload(CONTRIBUTOR, key)).toMatchObject({
      state: 'refused',
      fault: { code: 'photo-unworkable' },
    })
  })

  it('let a file wait when the store fails, and never hold that against it', async () => {
    const key = await wait(45)
    process.env.S3_BUCKET = 'no-such-store'
    process.env.S3_ENDPOINT = 'http://127.0.0.1:9'
    process.env.S3_ACCESS_KEY_ID = 'a'
    process.env.S3_SECRET_ACCESS_KEY = 'b'
    try {
      for (let times = 0; times < 2; times += 1) {
        await expect(workPhotos()).rejects.toThrow()
        await expire(key)
      }
    } finally {
      for (const name of ['S3_BUCKET', 'S3_ENDPOINT', 'S3_ACCESS_KEY_ID', 'S3_SECRET_ACCESS_KEY'])
        delete process.env[name]
    }
    expect(await db().photoJob.findUnique({ where: { uploadKey: key } })).toMatchObject({ attempts: 0 })
    await workPhotos()
    expect(await readUpload(CONTRIBUTOR, key)).toMatchObject({ state: 'ready' })
  })
})

describe('a picture in a visit', () => {
  let shown = ''
  const visit = (photos: { sha256: string; alt: string; spot?: string }[], on = '2010-06-20') =>
    makeVisit({ case: 'photo-wall', on, baseline: on === '2010-06-20', photos })
  const submitVisit = (actor: Member, slug: string, photos: { sha256: string; alt: string }[]) =>
    submit(actor, makeSubmission({ key: v7(), kind: 'visit', slug, body: visit(photos) }), REFERENCES)

  beforeAll(async () => {
    await publish('case', 'photo-wall', makeCase())
    shown = await shaOf(await jpeg({ seed: 50 }))
  })

  it('is the uploader’s and the reviewers’ to see before it is published, and then everyone’s', async () => {
    const states = async () =>
      Promise.all([GUEST, OTHER, CONTRIBUTOR, REVIEWER, STEWARD].map((actor) => photoState(actor, shown)))
    expect(await states()).toEqual(['absent', 'absent', 'private', 'private', 'private'])
    await publish('visit', 'photo-wall-2010', visit([{ sha256: shown, alt: 'The gable.' }]))
    expect(await states()).toEqual(['open', 'open', 'open', 'open', 'open'])
    expect((await photoFacts([shown])).get(shown)).toMatchObject({ width: 640, erased: false })
  })

  it('stays open in an earlier version, and closes when the entry is withdrawn', async () => {
    const sha = await shaOf(await jpeg({ seed: 51 }))
    await publish('visit', 'photo-wall-2012', visit([{ sha256: sha, alt: 'The gable.' }], '2012-06-01'))
    await publish('visit', 'photo-wall-2012', visit([], '2012-06-01'), 1)
    expect(await photoState(GUEST, sha)).toBe('open')
    await withdraw(STEWARD, { key: v7(), slug: 'photo-wall-2012', words: 'Asked for.' })
    expect(await photoState(GUEST, sha)).toBe('absent')
  })

  it('must exist and be the author’s, or have been in the entry before', async () => {
    const nothing = { sha256: 'f'.repeat(64), alt: 'Nothing.' }
    await expect(submitVisit(CONTRIBUTOR, 'photo-wall-a', [nothing])).rejects.toEqual(fault('unknown-photo'))
    const others = { sha256: shown, alt: 'Somebody else’s.' }
    await expect(submitVisit(OTHER, 'photo-wall-b', [others])).rejects.toEqual(fault('unknown-photo'))
    await expect(submitVisit(CONTRIBUTOR, 'photo-wall-c', [others, others])).rejects.toEqual(
      fault('repeated'),
    )
    const corrected = { kind: 'visit' as const, slug: 'photo-wall-2010', basedOn: 1, body: visit([others]) }
    await expect(
      submit(OTHER, makeSubmission({ key: v7(), ...corrected }), REFERENCES),
    ).resolves.toMatchObject({
      number: 2,
    })
  })

  it('is found again in other entries, itself or its like', async () => {
    const sha = await shaOf(await jpeg({ seed: 52 }))
    await publish('visit', 'photo-wall-2013', visit([{ sha256: sha, alt: 'East.' }], '2013-06-01'))
    const stored = await photoStore().get(nameOf.kept(sha))
    const smaller = await sharp(await buffer(stored?.stream ?? Readable.from([])))
      .resize(500)
      .jpeg({ quality: 60 })
      .toBuffer()
    const copy = await shaOf(smaller, OTHER)
    expect(copy).not.toBe(sha)
    const [found, ...others] = await similarPhotos(copy)
    expect(found).toMatchObject({ sha256: sha, shownBy: [{ slug: 'photo-wall-2013', state: 'published' }] })
    expect(found?.differs).toBeLessThanOrEqual(6)
    expect(others).toEqual([])
    expect(await similarPhotos(sha, found?.shownBy[0]?.entryId ?? null)).toEqual([])
  })

  it('asks an index which revisions show it', async () => {
    const plan = await db().$transaction(async (tx) => {
      await tx.$executeRaw`SET LOCAL enable_seqscan = off`
      return tx.$queryRaw<{ 'QUERY PLAN': string }[]>`
        EXPLAIN SELECT FROM "Revision" r
        WHERE (r.body -> 'photos') @> jsonb_build_array(jsonb_build_object('sha256', ${shown}::text))`
    })
    expect(plan.map((row) => row['QUERY PLAN']).join('\n')).toContain('Revision_photos')
  })
})

describe('removePhoto(actor, sha256)', () => {
  it('deletes one’s own with its files, so that it may be sent anew', async () => {
    const file = await jpeg({ seed: 55 })
    const sha = await shaOf(file)
    await expect(removePhoto(OTHER, sha)).rejects.toMatchObject({ code: 'not-found' })
    await removePhoto(CONTRIBUTOR, sha)
    expect(await photoStore().get(nameOf.kept(sha))).toBeNull()
    expect((await ownPhotos(CONTRIBUTOR)).map((photo) => photo.sha256)).not.toContain(sha)
    expect(await send(file)).toMatchObject({ state: 'ready', known: false })
  })

  it('keeps what a revision shows, one that waits for review too, and what another sent as well', async () => {
    const [waits, both] = [await jpeg({ seed: 56 }), await jpeg({ seed: 57 })]
    const [shown, shared] = [await shaOf(waits), await shaOf(both)]
    await shaOf(both, OTHER)
    const body = { ...makeVisit(), case: 'photo-wall', photos: [{ sha256: shown, alt: 'East.' }] }
    await submit(
      CONTRIBUTOR,
      makeSubmission({ key: v7(), kind: 'visit', slug: 'photo-wall-x', body }),
      REFERENCES,
    )
    for (const sha of [shown, shared])
      await expect(removePhoto(CONTRIBUTOR, sha)).rejects.toMatchObject({ code: 'conflict' })
    const [newest] = await ownPhotos(CONTRIBUTOR, { limit: 1 })
    expect(newest).toMatchObject({ sha256: shared, shown: false })
    const [before] = await ownPhotos(CONTRIBUTOR, { limit: 1, after: newest?.place })
    expect(before).toMatchObject({ sha256: shown, shown: true })
  })
})

describe('removePhoto beside a submission that shows it', () => {
  const writeFor = (sha: string, slug: string) =>
    makeSubmission({
      key: v7(),
      kind: 'visit',
      slug,
      body: { ...makeVisit(), case: 'photo-wall', photos: [{ sha256: sha, alt: 'East.' }] },
    })

  it('waits for one that has looked at it, and then refuses', async () => {
    const sha = await shaOf(await jpeg({ seed: 170 }))
    let removal: Promise<unknown> = Promise.resolve()
    await db().$transaction(async (tx) => {
      await submitIn(tx, CONTRIBUTOR, writeFor(sha, 'photo-wall-held'), REFERENCES)
      removal = removePhoto(CONTRIBUTOR, sha).then(
        () => 'removed',
        (refusal) => refusal,
      )
      expect(await Promise.race([removal, sleep(500, 'waits')])).toBe('waits')
    })
    expect(await removal).toMatchObject({ code: 'conflict', message: expect.stringMatching(/shows this/) })
    expect(await isStored(sha)).toBe(true)
  })

  it('lets exactly one of both through, however they fall', async () => {
    for (let round = 0; round < 8; round += 1) {
      const sha = await shaOf(await jpeg({ seed: 180 + round }))
      const submission = submit(CONTRIBUTOR, writeFor(sha, `photo-wall-raced-${round}`), REFERENCES)
      if (round % 2 === 1) await sleep(round)
      const outcomes = await Promise.allSettled([submission, removePhoto(CONTRIBUTOR, sha)])
      expect(outcomes.filter(({ status }) => status === 'fulfilled')).toHaveLength(1)
      const shownNow = outcomes[0].status === 'fulfilled'
      expect(await db().photo.count({ where: { sha256: sha } })).toBe(shownNow ? 1 : 0)
      expect(await isStored(sha)).toBe(shownNow)
    }
  })

  it('keeps the files of the same picture that somebody sends while they are removed', async () => {
    const file = await jpeg({ seed: 190 })
    const sha = await shaOf(file)
    await db().$transaction(async (tx) => {
      await tx.upload.deleteMany({ where: { sha256: sha } })
      await tx.photo.delete({ where: { sha256: sha } })
    })
    // The row is gone and the files are about to go when it comes again.
    await send(file, OTHER)
    await removeFilesOfNone(sha)
    expect(await isStored(sha)).toBe(true)
    // And where they went before its row came, they are stored again with it.
    await photoStore().removeAll(nameOf.photo(sha))
    await db().photo.delete({ where: { sha256: sha } })
    await db().$transaction((tx) =>
      encodePhotoOf(file).then((picture) =>
        addPhoto(tx, picture, { keepDate: false, uploaderKey: OTHER.key }, sha256(file)),
      ),
    )
    expect(await isStored(sha)).toBe(true)
  })
})

describe('a backup', () => {
  it('carries what is known of pictures, and verify names each whose file is not there or not it', async () => {
    const [lost, altered] = [await shaOf(await jpeg({ seed: 70 })), await shaOf(await jpeg({ seed: 71 }))]
    const all = () => db().photo.findMany({ orderBy: { sha256: 'asc' } })
    const before = await all()
    const path = join(dataDir, 'a.jsonl.gz')
    expect((await backup(dataDir, path)).rows).toBeGreaterThanOrEqual(before.length)
    expect((await verify(dataDir)).findings).toEqual([])
    await closeDb()
    process.env.DATABASE_URL = await copyTemplate(`t_${v7().replaceAll('-', '')}`)
    await restoreBackup(dataDir, path)
    expect(await all()).toEqual(before)
    await photoStore().removeAll(nameOf.photo(lost))
    writeFileSync(join(dataDir, 'photos', nameOf.kept(altered)), 'painted over')
    const found = (await verify(dataDir)).findings.map(({ what, where }) => [what, where])
    expect(found.sort()).toEqual([
      ['altered-photo', nameOf.kept(altered)],
      ['missing-photo', nameOf.kept(lost)],
    ])
  })
})

describe('loadDemoPhotos(entries)', () => {
  const entry = (sha: string): DemoEntry => {
    const body = visit([{ sha256: sha, alt: 'A drawing.' }])
    return {
      kind: 'visit',
      slug: 'drawn',
      revisions: [{ author: 'b', note: 'n', body, placeOf: () => place }],
    }
  }
  const place = { file: 'x.yaml', line: 1, column: 1 }
  const visit = (photos: object[]) => ({ ...makeVisit(), photos })

  it('stores each drawing once, as it stands, in the name of the visit’s author', async () => {
    const drawing = await jpeg({ seed: 80 })
    const sha = sha256(drawing)
    const load = () => loadDemoPhotos([entry(sha), entry('d'.repeat(64))], () => new Map([[sha, drawing]]))
    expect([await load(), await load()]).toEqual([1, 0])
    expect(await db().photo.findUnique({ where: { sha256: sha } })).toMatchObject({
      uploaders: ['demo-contributor-b'],
      sizes: [320, 640],
    })
    await photoStore().removeAll(nameOf.photo(sha))
    expect(await load()).toBe(1)
    const kept = await photoStore().get(nameOf.kept(sha))
    expect(sha256(await buffer(kept?.stream ?? Readable.from([])))).toBe(sha)
  })

  it('reads a drawing for every photo of content/demo, and no drawing that none shows', () => {
    const shown = readDemo().flatMap(({ revisions }) =>
      revisions.flatMap(({ body }) => ((body as VisitBody).photos ?? []).map((photo) => photo.sha256)),
    )
    expect([...new Set(shown)].sort()).toEqual([...readDemoPhotos().keys()].sort())
    expect(shown.length).toBeGreaterThan(3)
  })
})

/** A file as the worker makes a picture of it. */
async function encodePhotoOf(file: Buffer) {
  const path = join(dataDir, `encode-${v7()}.jpg`)
  writeFileSync(path, file)
  return encodePhoto(path)
}

describe('erasing a picture', () => {
  it('that is sent once more at that moment leaves none of its files', async () => {
    const file = await jpeg({ seed: 191 })
    const sha = await shaOf(file)
    await publish('visit', 'photo-wall-2017', {
      ...makeVisit({ case: 'photo-wall', on: '2017-06-01', baseline: false }),
      photos: [{ sha256: sha, alt: 'A face.' }],
    })
    await erasePhoto(STEWARD, { sha256: sha, ground: 'personal-data', words: 'A face.' })
    expect((await noticesFor(CONTRIBUTOR.key)).notices[0]).toMatchObject({
      what: 'photo-erased',
      slug: 'photo-wall-2017',
    })
    const picture = await encodePhotoOf(file)
    await storePicture(picture)
    const adding = db().$transaction((tx) =>
      addPhoto(tx, picture, { keepDate: false, uploaderKey: OTHER.key }, 'd'.repeat(64)),
    )
    await expect(adding).rejects.toEqual(fault('photo-erased'))
    await removeFilesOfNone(sha)
    expect(existsSync(join(dataDir, 'photos', nameOf.photo(sha)))).toBe(false)
  })

  const erase = (sha: string) =>
    db().$transaction((tx) =>
      erasePhotoIn(tx, { sha256: sha, by: STEWARD.key, reason: 'A face.', at: new Date() }),
    )

  it('hides it from everyone at once, removes its files, and does not take it again', async () => {
    const file = await jpeg({ seed: 60 })
    const sha = await shaOf(file)
    await publish('visit', 'photo-wall-2015', {
      ...makeVisit({ case: 'photo-wall', on: '2015-06-01', baseline: false }),
      photos: [{ sha256: sha, alt: 'A face at the window.' }],
    })
    await expect(removePhotoFiles(sha)).rejects.toBeInstanceOf(Refusal)
    await erase(sha)
    expect(await photoState(STEWARD, sha)).toBe('gone')
    await removePhotoFiles(sha)
    await removePhotoFiles(sha)
    expect(existsSync(join(dataDir, 'photos', nameOf.photo(sha)))).toBe(false)
    await expect(erase(sha)).rejects.toMatchObject({ code: 'conflict' })
    expect(await send(file, OTHER)).toMatchObject({ state: 'refused', fault: { code: 'photo-erased' } })
    await expect(erase('e'.repeat(64))).rejects.toMatchObject({ code: 'not-found' })
  })

  it('leaves a mark that nothing changes, and no other row of a picture may change or go', async () => {
    const sha = await shaOf(await jpeg({ seed: 61 }))
    await expect(db().photo.update({ where: { sha256: sha }, data: { width: 7 } })).rejects.toThrow()
    await expect(db().photo.update({ where: { sha256: sha }, data: { uploaders: ['x'] } })).rejects.toThrow()
    await erase(sha)
    await expect(
      db().photo.update({ where: { sha256: sha }, data: { eraseReason: 'Other.' } }),
    ).rejects.toThrow()
    await expect(db().photo.delete({ where: { sha256: sha } })).rejects.toThrow()
  })
})
