import type { Db } from '#lib/db/client.ts'
import type { DraftText, HeldText } from '#lib/db/drafts.ts'
import { isErased } from '#lib/entry/erased.ts'

/** The revision whose body goes, as it stood before. */
export interface Going {
  readonly id: string
  readonly number: number
  readonly body: unknown
}

/** From so many characters on, a text that stands within another is taken for the same telling. */
const TELLING = 8

/**
 * Takes what an erased body told out of drafts: all of the one it was sent from; of those still open that were begun
 * from it, every field that it had filled; and of any other draft of its entry, or of an adaptation, each field that
 * tells what it alone told. Of one that was sent as another version, only what came in for it since is looked at. What
 * its writer added beside stays.
 *
 * @param entry held by the caller, so that no draft is begun from the body meanwhile
 * @returns keys of those whose open drafts lost something
 */
export async function clearDrafts(
  tx: Db,
  entry: { readonly id: string; readonly slug: string },
  going: Going,
): Promise<string[]> {
  await tx.$executeRaw`
    UPDATE "Draft" SET typed = '{}', held = NULL, "heldAt" = NULL, version = version + 1
    WHERE "submittedRevisionId" = ${going.id}::uuid`
  const open = await tx.$queryRaw<
    { id: string; ownerKey: string; sent: boolean; begun: boolean; typed: DraftText; held: HeldText | null }[]
  >`
    SELECT id, "ownerKey", typed, held, "submittedRevisionId" IS NOT NULL AS sent,
      coalesce(slug = ${entry.slug} AND "basedOn" = ${going.number}, false)
        OR coalesce("adaptedFrom" = ${`${entry.slug}@${going.number}`}, false) AS begun
    FROM "Draft" WHERE ("submittedRevisionId" IS NULL OR held IS NOT NULL)
      AND (slug = ${entry.slug} OR "adaptedFrom" LIKE ${`${entry.slug}@%`} OR "submittedRevisionId" IN
        (SELECT r.id FROM "Revision" r WHERE r."entryId" = ${entry.id}::uuid)) FOR UPDATE`
  const told = await toldByItAlone(tx, entry.id, going)
  const losers: string[] = []
  for (const { id, ownerKey, sent, begun, typed, held } of open) {
    const goes = (field: string, text: string) =>
      !FIXED.includes(field) && ((begun && stands(going.body, field)) || tells(text, told))
    const kept = Object.entries(typed).filter(([field, text]) => sent || !goes(field, text))
    const keptHeld = Object.entries(held ?? {}).flatMap(([field, texts]) => {
      const left = texts.filter((text) => !goes(field, text))
      return left.length === 0 ? [] : [[field, left] as const]
    })
    const count = (all: HeldText | null) => Object.values(all ?? {}).flat().length
    const left = Object.fromEntries(keptHeld)
    if (kept.length === Object.keys(typed).length && count(left) === count(held)) continue
    await tx.$executeRaw`
      UPDATE "Draft" SET typed = ${JSON.stringify(Object.fromEntries(kept))}::jsonb,
        held = ${keptHeld.length > 0 ? JSON.stringify(left) : null}::jsonb,
        "heldAt" = CASE WHEN ${keptHeld.length > 0} THEN "heldAt" END, version = version + 1
      WHERE id = ${id}::uuid`
    losers.push(ownerKey)
  }
  return losers
}

/** What a draft points at; it tells nothing of the body. */
const FIXED: readonly string[] = ['adaptedFrom', 'case', 'entry.slug']

/** Every text and figure of the body that no other version of the entry has. */
async function toldByItAlone(tx: Db, entryId: string, { id, body }: Going): Promise<ReadonlySet<string>> {
  const others = await tx.revision.findMany({ where: { entryId, id: { not: id } }, select: { body: true } })
  const known = new Set(others.flatMap((other) => (isErased(other.body) ? [] : leaves(other.body))))
  return new Set(leaves(body).filter((leaf) => !known.has(leaf)))
}

function leaves(value: unknown): string[] {
  if (typeof value === 'string' || typeof value === 'number') return [String(value)]
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(leaves) : []
}

const tells = (text: string, told: ReadonlySet<string>): boolean =>
  told.has(text) || [...told].some((leaf) => leaf.length >= TELLING && text.includes(leaf))

/** Whether the body has something where this field stands; a mark or a typical value stands with its figure. */
function stands(body: unknown, field: string): boolean {
  let at = body
  for (const step of field.replace(/-mark$/, '').split('.')) {
    if (typeof at !== 'object' || at === null) return false
    if (!Object.hasOwn(at, step)) return step === 'typical'
    at = Reflect.get(at, step)
  }
  return at !== undefined && at !== null
}
