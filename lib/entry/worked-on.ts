import { z } from 'zod'
import { text } from './fields.ts'
import { MOST_PRINTED } from './kept-sheet.ts'

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
  /** Path and query that give the same sheet today, without what it costs, or say what changed. */
  address: text(6000),
  /** `recipe-slug@3` of a job sheet. */
  recipe: text(100).optional(),
  edition: text(100),
  sums: z.number().int().positive(),
  digest: text(20),
  figures: z.array(z.strictObject({ label: text(600), value: text(6000) })).max(MOST_PRINTED),
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
  readonly figures: {
    readonly printed: readonly { readonly label: string; readonly value: string; readonly cost?: true }[]
    readonly openDigest?: string
  }
}

/** What in the address of a job sheet is its owner's business: prices, pay, currency and name. */
const OWN_OF_JOB = /^(?:price-.+|rate|hours|money|label)(?:-\d+)?(?:-mark)?$/

/**
 * The address of a sheet without what is its owner's business; it gives all of its other figures.
 *
 * @param digest of those figures, for the one that the address names; null where it is not known
 */
export function openAddress(calculation: string, address: string, digest: string | null): string {
  const [path = '', query = ''] = address.split('?')
  const isOwn = (name: string) => (calculation === 'job' ? OWN_OF_JOB.test(name) : name === 'label')
  const open = query.split('&').flatMap((part) => {
    const [name = ''] = new URLSearchParams(part).keys()
    if (isOwn(name) || (name === 'is' && digest === null)) return []
    return [name === 'is' ? `is=${digest}` : part]
  })
  return open.join('') === '' ? path : `${path}?${open.join('&')}`
}

/** Stands for the digest of a sheet with costs that was kept before those were told apart. */
const NOT_KNOWN = '?'

/** The copy of a kept sheet that goes into a body: nothing in it tells what the job costs its owner. */
export function copyOf(kept: Kept): WorkedOn {
  const { printed, openDigest } = kept.figures
  const costly = printed.some(({ cost }) => cost)
  const digest = costly ? (openDigest ?? null) : kept.digest
  return {
    sheet: kept.id,
    title: kept.name,
    calculation: kept.calculation,
    address: openAddress(kept.calculation, kept.address, digest),
    ...(kept.recipe && { recipe: `${kept.recipe.slug}@${kept.recipe.revision}` }),
    edition: kept.edition,
    sums: kept.sums,
    digest: digest ?? NOT_KNOWN,
    figures: printed.flatMap(({ label, value, cost }) =>
      cost ? [] : [{ label: label.trim(), value: value.trim() }],
    ),
  }
}

/** Do both say the same of the sheet, whatever its name and what it is the basis of? */
export function isSameCopy(a: WorkedOn, b: WorkedOn): boolean {
  const { of: _, title: __, ...mine } = a
  const { of: ___, title: ____, ...theirs } = b
  return JSON.stringify(sorted(mine)) === JSON.stringify(sorted(theirs))
}

const sorted = (copy: object) => Object.entries(copy).sort(([a], [b]) => (a < b ? -1 : 1))
