import { z } from 'zod'
import type { Actor, Member, System } from '#lib/access/actor.ts'
import { may, must } from '#lib/access/policy.ts'
import { recordAct } from '#lib/db/audit.ts'
import { type Db, db } from '#lib/db/client.ts'
import { isErased } from '#lib/entry/erased.ts'
import { slug, text } from '#lib/entry/fields.ts'
import { bytesOf, KEPT_SYSTEMS, keptFigures, MOST_BYTES } from '#lib/entry/kept-sheet.ts'
import { Refusal } from '#lib/errors.ts'
import { parse } from './parse.ts'

/** What its owner calls a kept sheet. */
export const sheetName = text(120)
/** What its owner notes beside it; blank is none. */
export const sheetNote = z.union([z.literal(''), text(2000)])

const keeping = z.strictObject({
  /** Made by whoever asks: asking again with it finds the same sheet. */
  id: z.uuid(),
  name: sheetName,
  note: sheetNote,
  calculation: slug,
  /** Of this site: a path with its query. */
  address: z
    .string()
    .max(6000)
    .regex(/^\/(?![/\\])[\x21-\x7e]*$/, 'wrong-format'),
  system: z.enum(KEPT_SYSTEMS),
  figures: keptFigures.refine((figures) => bytesOf(figures) <= MOST_BYTES, 'too-long'),
  recipe: z
    .strictObject({
      slug,
      revision: z.int().positive(),
      /** The revision whose standing, and reason for it, the sheet shows. */
      standingFrom: z.int().positive(),
      title: z.string().min(1).max(300),
      invented: z.boolean(),
    })
    .nullable(),
  edition: z.string().min(1).max(100),
  sums: z.int().positive(),
  digest: z.string().regex(/^[0-9a-f]{10}$/, 'wrong-format'),
})
export type Keeping = z.infer<typeof keeping>

/** Sheets that one account may keep. */
export const MOST_SHEETS = 200

/**
 * Keeps a sheet: what it printed and from what, never to be altered.
 *
 * @returns its id, and whether it had been kept before under that id
 * @throws Refusal `forbidden`; `conflict` for an id that is somebody else's, with too many kept, or where a version of
 *   the recipe that it shows words of is erased
 */
export async function keepSheet(
  actor: Actor,
  given: Keeping,
): Promise<{ readonly id: string; readonly repeated: boolean }> {
  const owner = must(actor, 'keepSheet', undefined)
  const { recipe, ...told } = parse(keeping, given)
  return db().$transaction(async (tx) => {
    // Of two that come at once the second counts what the first has kept.
    await tx.$executeRaw`SELECT pg_advisory_xact_lock(hashtext('kept-sheets'), hashtext(${owner.key}))`
    const first = await tx.keptSheet.findUnique({ where: { id: told.id }, select: { ownerKey: true } })
    if (first !== null) return { id: ownOf(first, owner, told.id), repeated: true }
    if ((await tx.keptSheet.count({ where: { ownerKey: owner.key } })) >= MOST_SHEETS)
      throw new Refusal(
        'conflict',
        `You keep ${MOST_SHEETS} sheets, as many as one account may. Delete one that you need no more, then keep this one.`,
      )
    if (recipe !== null && (await showsErased(tx, recipe)))
      throw new Refusal('conflict', 'A version of this recipe was erased meanwhile. Work the sheet out anew.')
    const { count } = await tx.keptSheet.createMany({
      data: [
        {
          ...told,
          ownerKey: owner.key,
          recipeSlug: recipe?.slug ?? null,
          recipeRevision: recipe?.revision ?? null,
          recipeTitle: recipe?.title ?? null,
          invented: recipe?.invented ?? false,
          createdAt: new Date(),
        },
      ],
      skipDuplicates: true,
    })
    if (count === 0) throw new Refusal('conflict', NOT_THEIRS)
    await recordAct(tx, owner, 'keep-sheet', told.id, { calculation: told.calculation })
    return { id: told.id, repeated: false }
  })
}

/**
 * Whether a version that the sheet shows words of is erased. The entry is held first: an erasure that has begun is waited
 * for, since whoever works a sheet out meanwhile still reads the words, and none begins until the sheet is kept.
 */
async function showsErased(tx: Db, { slug, revision, standingFrom }: Shown): Promise<boolean> {
  await tx.$executeRaw`SELECT FROM "Entry" WHERE slug = ${slug} FOR SHARE`
  const shown = await tx.revision.findMany({
    where: { entry: { slug }, number: { in: [revision, standingFrom] } },
    select: { body: true },
  })
  return shown.some(({ body }) => isErased(body))
}
type Shown = NonNullable<Keeping['recipe']>

const NOT_THEIRS = 'That id belongs to another sheet.'

function ownOf({ ownerKey }: { ownerKey: string }, owner: Member | System, id: string): string {
  if (ownerKey !== owner.key) throw new Refusal('conflict', NOT_THEIRS)
  return id
}

/**
 * Gives a kept sheet another name and note; nothing else of it changes.
 *
 * @throws Refusal `not-found` for an id that is not there or somebody else's
 */
export async function renameSheet(
  actor: Actor,
  given: { readonly id: string; readonly name: string; readonly note: string },
): Promise<void> {
  const schema = z.strictObject({ id: z.uuid(), name: sheetName, note: sheetNote })
  const { id, name, note } = parse(schema, given)
  await db().$transaction(async (tx) => {
    const owner = await ownerIn(tx, actor, id)
    await tx.keptSheet.update({ where: { id }, data: { name, note, renamedAt: new Date() } })
    await recordAct(tx, owner, 'rename-sheet', id)
  })
}

/**
 * Deletes a kept sheet for good.
 *
 * @throws Refusal `not-found` for an id that is not there or somebody else's
 */
export async function deleteSheet(actor: Actor, given: { readonly id: string }): Promise<void> {
  const { id } = parse(z.strictObject({ id: z.uuid() }), given)
  await db().$transaction(async (tx) => {
    const owner = await ownerIn(tx, actor, id)
    await tx.keptSheet.delete({ where: { id } })
    await recordAct(tx, owner, 'delete-sheet', id)
  })
}

/** Whoever owns the sheet, which is held until the transaction ends. To all others it is not there. */
async function ownerIn(tx: Db, actor: Actor, id: string): Promise<Member | System> {
  must(actor, 'keepSheet', undefined)
  const [row] = await tx.$queryRaw<{ ownerKey: string }[]>`
    SELECT "ownerKey" FROM "KeptSheet" WHERE id = ${id}::uuid FOR UPDATE`
  if (row === undefined || !may(actor, 'ownSheet', row))
    throw new Refusal('not-found', 'You keep no such sheet.')
  return must(actor, 'ownSheet', row)
}
