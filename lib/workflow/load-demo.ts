import { v5 } from 'uuid'
import { type Member, SYSTEM } from '#lib/access/actor.ts'
import { ContentError, FaultList } from '#lib/content/fault.ts'
import { content } from '#lib/content/index.ts'
import { type Db, db } from '#lib/db/client.ts'
import { lockPublishing, refresh } from '#lib/db/projection/refresh.ts'
import { digestOf } from '#lib/entry/digest.ts'
import { Refusal } from '#lib/errors.ts'
import { decideIn } from './decide.ts'
import { type DemoEntry, type DemoRevision, readDemo } from './demo-files.ts'
import { loadDemoPhotos } from './demo-photos.ts'
import { disputeIn } from './dispute.ts'
import type { References } from './references.ts'
import { withdrawAll } from './remove-demo.ts'
import { submitIn } from './submit.ts'
import { carryOutIn } from './withdraw.ts'

/** Keys of the demo's writes are made from what they write, so that loading again writes nothing twice. */
const NAMESPACE = 'b6d0a1c2-54f7-5c1e-9a3d-7e0f4b8c2d61'
/** Where two must read it, one publishes after the other. */
const REVIEWERS = ['demo-reviewer-1', 'demo-reviewer-2'].map(
  (key): Member => ({ kind: 'member', key, roles: ['reviewer'] }),
)

export interface DemoLoad {
  readonly added: number
  readonly revised: number
  readonly restored: number
  /** Demo entries that have no file any more. */
  readonly withdrawn: number
  readonly unchanged: number
  /** The demo was taken out of this database and stays out: nothing was loaded. */
  readonly removed: boolean
}

interface Options {
  readonly entries?: readonly DemoEntry[]
  /** What bodies may point into; content/ by default. */
  readonly references?: References
  /** Put back what {@link removeDemo} took out. Without it a removed demo stays removed. */
  readonly restore?: boolean
}

/**
 * Loads the invented entries of content/demo through the same doors as any other: submitted by one, published
 * by another. A file that changed becomes a further revision, one that is gone a withdrawal; an entry that people
 * have revised since is left to them. A dispute that a file tells of is raised once. All in one transaction.
 *
 * @throws ContentError when a file is faulty, with file, line, column and field
 */
export async function loadDemo(options: Options = {}): Promise<DemoLoad> {
  const { entries = readDemo(), references, restore = false } = options
  await loadDemoPhotos(entries)
  return db().$transaction(
    async (tx) => {
      await lockPublishing(tx)
      const stored = await storedEntries(tx, entries)
      const all = [...stored.values()]
      if (!restore && all.length > 0 && all.every(({ withdrawn }) => withdrawn))
        return { ...NONE, removed: true }
      // Before anything is checked: a case may drop a work together with the visits to it.
      const withdrawn = await withdrawOthers(tx, entries)
      await refresh(tx, withdrawn)
      const faults = new FaultList()
      const changes: Change[] = []
      for (const entry of entries) {
        // Visits come last; those of a faulty case would only repeat its faults.
        if (entry.kind === 'visit' && !faults.isEmpty) break
        const change = await loadEntry(tx, entry, stored.get(entry.slug), references, restore, faults)
        if (change !== null) changes.push(change)
      }
      if (!faults.isEmpty) throw new ContentError(faults.sorted())
      await refresh(
        tx,
        changes.map(({ entryId }) => entryId),
      )
      for (const entry of entries) await disputeEntry(tx, entry)
      const count = (what: Change['what']) => changes.filter((change) => change.what === what).length
      const [added, revised, restored] = [count('added'), count('revised'), count('restored')]
      const unchanged = entries.length - changes.length
      return { added, revised, restored, withdrawn: withdrawn.length, unchanged, removed: false }
    },
    { timeout: 300_000, maxWait: 60_000 },
  )
}

const NONE = { added: 0, revised: 0, restored: 0, withdrawn: 0, unchanged: 0 }

interface Change {
  readonly entryId: string
  readonly what: 'added' | 'revised' | 'restored'
}

interface Stored {
  readonly slug: string
  readonly entryId: string
  readonly withdrawn: boolean
  readonly number: number
  readonly bodyDigest: string
  readonly authorKey: string
}

async function storedEntries(tx: Db, entries: readonly DemoEntry[]): Promise<ReadonlyMap<string, Stored>> {
  const rows = await tx.$queryRaw<Stored[]>`
    SELECT DISTINCT ON (e.id) e.slug, e.id AS "entryId", e."withdrawnAt" IS NOT NULL AS withdrawn, r.number,
      r."bodyDigest", r."authorKey"
    FROM "Entry" e JOIN "Revision" r ON r."entryId" = e.id
    WHERE e.slug = ANY(${entries.map(({ slug }) => slug)}::text[]) ORDER BY e.id, r.number DESC`
  return new Map(rows.map((row) => [row.slug, row]))
}

/** Brings one entry up to its file; null when there was nothing to do, or when its file is at fault. */
async function loadEntry(
  tx: Db,
  entry: DemoEntry,
  stored: Stored | undefined,
  references: References | undefined,
  restore: boolean,
  faults: FaultList,
): Promise<Change | null> {
  if (stored === undefined) {
    let basedOn: number | null = null
    let entryId: string | null = null
    for (const revision of entry.revisions) {
      entryId = await publish(tx, entry, revision, basedOn, references, faults)
      if (entryId === null) return null
      basedOn = (basedOn ?? 0) + 1
    }
    return entryId === null ? null : { entryId, what: 'added' }
  }
  const last = entry.revisions.at(-1)
  if (!stored.authorKey.startsWith('demo-') || last === undefined) return null
  if (stored.withdrawn && !restore) return null
  if (stored.withdrawn) await putBack(tx, stored)
  if (digestOf(last.body) === stored.bodyDigest)
    return stored.withdrawn ? { entryId: stored.entryId, what: 'restored' } : null
  const entryId = await publish(tx, entry, last, stored.number, references, faults)
  return entryId === null ? null : { entryId, what: 'revised' }
}

/** Each invented hand objects once, however often its words are changed; answering is left to reviewers. */
async function disputeEntry(tx: Db, { slug, disputes = [] }: DemoEntry): Promise<void> {
  for (const { author, words } of disputes) {
    const actor = contributorOf(author)
    const before = await tx.decision.count({
      where: { entry: { slug }, outcome: 'dispute', reviewerKey: actor.key },
    })
    const shows = await tx.entry.count({
      where: { slug, withdrawnAt: null, published: { authorKey: { startsWith: 'demo-' } } },
    })
    if (before === 0 && shows === 1)
      await disputeIn(tx, actor, { key: keyOf('dispute', slug, author), slug, words })
  }
}

const contributorOf = (author: string): Member => ({
  kind: 'member',
  key: `demo-contributor-${author}`,
  roles: ['contributor'],
})

const keyOf = (...parts: readonly (string | number)[]) => v5(parts.join(' '), NAMESPACE)

async function putBack(tx: Db, { slug }: Stored): Promise<void> {
  const times = await tx.decision.count({ where: { entry: { slug }, outcome: 'restore' } })
  const words = 'The demo was asked for again.'
  await carryOutIn(tx, SYSTEM, 'restore', { key: keyOf('restore', slug, times), slug, words })
}

/** Takes out what an earlier edition of the demo brought in and this one has no file for. */
async function withdrawOthers(tx: Db, entries: readonly DemoEntry[]): Promise<string[]> {
  const others = await tx.entry.findMany({
    where: {
      slug: { notIn: entries.map(({ slug }) => slug) },
      published: { authorKey: { startsWith: 'demo-' } },
    },
    orderBy: { slug: 'asc' },
    select: { id: true, slug: true },
  })
  return withdrawAll(tx, others, 'This entry was invented, and is no longer part of the demo.')
}

async function publish(
  tx: Db,
  { kind, slug }: DemoEntry,
  { author, note, body, placeOf }: DemoRevision,
  basedOn: number | null,
  references: References | undefined,
  faults: FaultList,
): Promise<string | null> {
  const key = keyOf('submit', slug, basedOn ?? 0, digestOf(body))
  try {
    // Content is read only when there is something to check: starting again with nothing changed stays quick.
    const { entryId, number } = await submitIn(
      tx,
      contributorOf(author),
      { key, kind, slug, basedOn, body, note },
      references ?? content(),
    )
    const verdict = { outcome: 'publish' as const, checklist: {}, words: 'Invented for the demo.' }
    for (const [nth, reviewer] of REVIEWERS.entries()) {
      const key = nth === 0 ? keyOf('publish', slug, number) : keyOf('publish', slug, number, nth)
      const { decided } = await decideIn(tx, reviewer, { key, slug, number, ...verdict })
      if (decided.outcome === 'publish') break
    }
    return entryId
  } catch (error) {
    if (!(error instanceof Refusal)) throw error
    if (error.faults.length === 0) faults.add(placeOf(''), error.message)
    for (const { field, code, value } of error.faults)
      faults.add(placeOf(field), `${field}: ${code}${value === undefined ? '' : ` ${value}`}`)
    return null
  }
}
