import { type KEPT_SYSTEMS, type KeptFigures, readKeptFigures } from '#lib/entry/kept-sheet.ts'
import { db } from './client.ts'

/** A kept sheet in the list of its owner's. */
export interface KeptLine {
  readonly id: string
  readonly name: string
  readonly note: string
  /** `job`, or the last part of a calculation's address. */
  readonly calculation: string
  readonly recipe: KeptRecipe | null
  readonly createdAt: Date
}

/** The recipe that a job sheet was worked from, as it was then. */
export interface KeptRecipe {
  readonly slug: string
  readonly revision: number
  /** Null once it was erased. */
  readonly title: string | null
  readonly invented: boolean
}

/** One kept sheet with all that it printed. */
export interface KeptSheet extends KeptLine {
  readonly ownerKey: string
  readonly address: string
  readonly system: (typeof KEPT_SYSTEMS)[number]
  readonly figures: KeptFigures
  readonly edition: string
  readonly sums: number
  readonly digest: string
  /** That words of an erased version of the recipe were taken out, and why. */
  readonly erased: { readonly at: Date; readonly words: string } | null
}

const UUID = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/

/** Everything that somebody keeps, the newest first. */
export async function keptSheetsOf(ownerKey: string): Promise<KeptLine[]> {
  const rows = await db().keptSheet.findMany({
    where: { ownerKey },
    omit: { figures: true },
    orderBy: [{ createdAt: 'desc' }, { id: 'desc' }],
  })
  return rows.map(lineOf)
}

/** One's own kept sheet; null for an id that is not there or somebody else's. */
export async function ownKeptSheet(ownerKey: string, id: string): Promise<KeptSheet | null> {
  if (!UUID.test(id)) return null
  const row = await db().keptSheet.findFirst({ where: { id, ownerKey } })
  if (row === null) return null
  const { address, edition, sums, digest } = row
  const system = row.system === 'us' ? 'us' : 'metric'
  const figures = readKeptFigures(row.figures)
  const erased = await erasureOf(row)
  return { ...lineOf(row), ownerKey, address, system, figures, edition, sums, digest, erased }
}

/** The erasure that a sheet lost words to. */
async function erasureOf({ recipeSlug, erasedAt }: { recipeSlug: string | null; erasedAt: Date | null }) {
  if (recipeSlug === null || erasedAt === null) return null
  const decision = await db().decision.findFirst({
    where: { entry: { slug: recipeSlug }, outcome: 'erase', at: erasedAt },
    select: { at: true, words: true },
  })
  return decision ?? { at: erasedAt, words: '' }
}

/** Whether somebody keeps a sheet of this id. */
export const keepsSheet = async (ownerKey: string, id: string): Promise<boolean> =>
  UUID.test(id) && (await db().keptSheet.count({ where: { id, ownerKey } })) > 0

interface Row extends Omit<KeptLine, 'recipe'> {
  readonly recipeSlug: string | null
  readonly recipeRevision: number | null
  readonly recipeTitle: string | null
  readonly invented: boolean
}

const lineOf = (row: Row): KeptLine => ({
  id: row.id,
  name: row.name,
  note: row.note,
  calculation: row.calculation,
  recipe:
    row.recipeSlug === null
      ? null
      : {
          slug: row.recipeSlug,
          revision: row.recipeRevision ?? 1,
          title: row.recipeTitle,
          invented: row.invented,
        },
  createdAt: row.createdAt,
})
