import { z } from 'zod'
import { text } from './fields.ts'

/**
 * A kept sheet that an entry rests on. Its figures are copied into the body, as they printed: whatever becomes of the
 * sheet in its owner's account, a version that was published stays as it was.
 */
export const workedOn = z.strictObject({
  /** Of the kept sheet; only its owner can open it, and they may delete it. */
  sheet: z.string().regex(/^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/, 'not-a-sheet'),
  /** What it is the basis of, in the author's words. */
  of: text(300).optional(),
  title: text(120),
  calculation: text(60),
  /** Path and query that give the same sheet today, or say what changed. */
  address: text(6000),
  /** `recipe-slug@3` of a job sheet. */
  recipe: text(100).optional(),
  edition: text(100),
  sums: z.number().int().positive(),
  digest: text(20),
  figures: z.array(z.strictObject({ label: text(300), value: text(1000) })).max(200),
})
export type WorkedOn = z.infer<typeof workedOn>

/** Sheets that one entry may rest on. */
export const workedOnList = z.array(workedOn).max(4).optional()

/** What a sheet must be for that. */
interface Kept {
  readonly id: string
  readonly name: string
  readonly calculation: string
  readonly address: string
  readonly recipe: { readonly slug: string; readonly revision: number } | null
  readonly edition: string
  readonly sums: number
  readonly digest: string
  readonly figures: { readonly printed: readonly { readonly label: string; readonly value: string }[] }
}

/** The copy of a kept sheet that goes into a body. */
export const copyOf = (kept: Kept): WorkedOn => ({
  sheet: kept.id,
  title: kept.name,
  calculation: kept.calculation,
  address: kept.address,
  ...(kept.recipe && { recipe: `${kept.recipe.slug}@${kept.recipe.revision}` }),
  edition: kept.edition,
  sums: kept.sums,
  digest: kept.digest,
  figures: kept.figures.printed.map(({ label, value }) => ({ label: label.trim(), value: value.trim() })),
})

/** Do both say the same of the sheet, whatever its name and what it is the basis of? */
export function isSameCopy(a: WorkedOn, b: WorkedOn): boolean {
  const { of: _, title: __, ...mine } = a
  const { of: ___, title: ____, ...theirs } = b
  return JSON.stringify(sorted(mine)) === JSON.stringify(sorted(theirs))
}

const sorted = (copy: object) => Object.entries(copy).sort(([a], [b]) => (a < b ? -1 : 1))
