import { v7 } from 'uuid'
import { z } from 'zod'
import type { Actor } from '#lib/access/actor.ts'
import { must } from '#lib/access/policy.ts'
import { content } from '#lib/content/index.ts'
import { type Db, db } from '#lib/db/client.ts'
import { SHAPES, type WrittenKind } from '#lib/entry/body.ts'
import { todayAnywhere } from '#lib/entry/dates.ts'
import { digestOf, revisionDigest } from '#lib/entry/digest.ts'
import { slug, text } from '#lib/entry/fields.ts'
import { Refusal } from '#lib/errors.ts'
import { lockEntry } from './ledger.ts'
import { parse } from './parse.ts'
import { checkReferences, type References } from './references.ts'

const submission = z.strictObject({
  /** Made by the client, once for one write: repeating it gives the first answer. */
  key: z.uuid(),
  kind: z.enum(Object.keys(SHAPES) as [WrittenKind, ...WrittenKind[]]),
  slug,
  /** Number of the revision that the writer started from; null for a new entry. */
  basedOn: z.number().int().positive().nullable(),
  body: z.unknown(),
  /** What changed and why, for the reader of the history. */
  note: text(600),
})
export type Submission = z.infer<typeof submission>

export interface Submitted {
  readonly entryId: string
  readonly revisionId: string
  readonly slug: string
  readonly number: number
  readonly digest: string
  /** True when the same key had been recorded before; the rest is the first answer. */
  readonly repeated: boolean
}

/** Somebody else's revision came between: both are here, for the writer to choose. Nothing was overwritten. */
export class EditConflict extends Refusal {
  readonly theirs: { readonly number: number; readonly body: unknown; readonly note: string }
  readonly yours: { readonly basedOn: number; readonly body: unknown; readonly note: string }

  constructor(theirs: EditConflict['theirs'], yours: EditConflict['yours']) {
    super(
      'conflict',
      `Revision ${theirs.number} came after revision ${yours.basedOn}, which you started from.`,
    )
    this.name = 'EditConflict'
    this.theirs = theirs
    this.yours = yours
  }
}

/**
 * Records a new entry, or a further revision of one, for review. Once it answers, the revision is on disk and
 * is never changed.
 *
 * @throws EditConflict when another revision came after the one this started from
 * @throws Refusal `forbidden`; `invalid` with each faulty field; `not-found` for a revision of nothing;
 *   `conflict` for an address that is taken or withdrawn
 */
export async function submit(
  actor: Actor,
  given: Submission,
  references: References = content(),
): Promise<Submitted> {
  return db().$transaction((tx) => submitIn(tx, actor, given, references))
}

/** {@link submit} inside a transaction that does more. */
export async function submitIn(
  tx: Db,
  actor: Actor,
  given: Submission,
  references: References,
): Promise<Submitted> {
  const { key: authorKey } = must(actor, 'submit', undefined)
  const write = parse(submission, given)
  const { shape, schema } = SHAPES[write.kind]
  const body = parse(schema, write.body)
  const first = await resultByKey(tx, write.key, authorKey)
  if (first !== null) return first
  const check = {
    tx,
    content: references,
    slug: write.slug,
    today: todayAnywhere(new Date()),
    authorKey,
  }
  const faults = await checkReferences(write.kind, body as never, check)
  if (faults.length > 0) throw new Refusal('invalid', 'Some fields point at what is not there.', faults)
  const entryId =
    write.basedOn === null ? await makeEntry(tx, write) : await holdEntry(tx, write, write.basedOn)
  if (entryId === null) return mustBeRepeat(await resultByKey(tx, write.key, authorKey))
  const parent = write.basedOn === null ? null : await lastRevision(tx, entryId)
  const number = (parent?.number ?? 0) + 1
  const createdAt = new Date()
  const told = { entryId, number, bodyDigest: digestOf(body), shape, note: write.note, authorKey, createdAt }
  const digest = revisionDigest({ ...told, parentDigest: parent?.digest ?? null })
  const revisionId = v7()
  const { count } = await tx.revision.createMany({
    data: [{ id: revisionId, ...told, basedOn: write.basedOn, body, digest, key: write.key }],
    skipDuplicates: true,
  })
  if (count === 0) throw new Refusal('conflict', 'That key belongs to another write.')
  return { entryId, revisionId, slug: write.slug, number, digest, repeated: false }
}

async function resultByKey(tx: Db, key: string, authorKey: string): Promise<Submitted | null> {
  const found = await tx.revision.findUnique({
    where: { key },
    include: { entry: { select: { slug: true } } },
  })
  if (found === null) return null
  if (found.authorKey !== authorKey) throw new Refusal('conflict', 'That key belongs to another write.')
  const { entryId, id, number, digest, entry } = found
  return { entryId, revisionId: id, slug: entry.slug, number, digest, repeated: true }
}

/** Waits for whoever is making the same address at this moment; null when it then exists. */
async function makeEntry(tx: Db, { kind, slug }: Submission): Promise<string | null> {
  const id = v7()
  const { count } = await tx.entry.createMany({ data: [{ id, kind, slug }], skipDuplicates: true })
  return count === 1 ? id : null
}

function mustBeRepeat(first: Submitted | null): Submitted {
  if (first !== null) return first
  throw new Refusal('conflict', 'That address is taken.', [{ field: 'slug', code: 'taken' }])
}

/**
 * Holds the entry and refuses when the writer has not seen its newest standing revision; null when the same
 * write was recorded while this one waited.
 */
async function holdEntry(tx: Db, write: Submission, basedOn: number): Promise<string | null> {
  const entry = await lockEntry(tx, write.slug)
  if (entry === null || entry.kind !== write.kind) throw new Refusal('not-found', 'There is no such entry.')
  const repeats = await tx.revision.count({ where: { key: write.key } })
  if (repeats > 0) return null
  if (entry.withdrawnAt !== null) throw new Refusal('conflict', 'This entry is withdrawn.')
  const base = await tx.revision.count({ where: { entryId: entry.id, number: basedOn } })
  if (base === 0) throw new Refusal('not-found', 'There is no such revision to start from.')
  const between = await tx.revision.findFirst({
    where: {
      entryId: entry.id,
      number: { gt: basedOn },
      state: { in: ['submitted', 'published', 'superseded'] },
    },
    orderBy: { number: 'desc' },
    select: { number: true, body: true, note: true },
  })
  if (between !== null) throw new EditConflict(between, { basedOn, body: write.body, note: write.note })
  return entry.id
}

const lastRevision = (tx: Db, entryId: string) =>
  tx.revision.findFirst({
    where: { entryId },
    orderBy: { number: 'desc' },
    select: { number: true, digest: true },
  })
