import {
  CERTIFICATE_ITEMS,
  type CertificateItem,
  type CertificateLimit,
  type ClassLimits,
  DECLARED_LIMITS,
  DECLARED_SOURCE,
  LIME_CLASSES,
  type LimeClass,
  SINGLE_RESULT_LIMITS,
  SINGLE_RESULT_SOURCE,
} from './certificate-limits.ts'
import {
  REACTIVITY_LIMITS,
  type ReactivityClass,
  SIZE_LIMITS,
  type SizeClass,
} from './certificate-quicklime.ts'
import { attempt, type Outcome } from './fault.ts'
import { type Inspection, inspect } from './inspect.ts'
import type { Basis } from './range.ts'

export interface CertificateInput {
  readonly class: LimeClass
  /** Of a quicklime, where the certificate states them. */
  readonly reactivityClass?: ReactivityClass | undefined
  readonly sizeClass?: SizeClass | undefined
  /** Results as the certificate prints them. */
  readonly results: Partial<Readonly<Record<CertificateItem, number | undefined>>>
}

/** `not-verified`: the limit is remembered or disputed, so it passes and fails nothing. */
export type CertificateOutcome = 'meets' | 'breaks' | 'not-verified' | 'not-given'

export interface CertificateRow {
  readonly item: CertificateItem
  readonly unit: string
  readonly value: number | null
  readonly kind: 'single-result' | 'declared'
  readonly min: number | null
  readonly max: number | null
  readonly outcome: CertificateOutcome
  readonly unsure: 'memory' | 'disputed' | null
  readonly basis: Basis
  readonly source: string
}

/**
 * Holds a test certificate against the single-result limits of EN 459-1 for its class, item by item, with
 * the declared limits from memory beside them. There is no verdict on the whole.
 *
 * @returns faults: an unknown class, results that are no numbers, negative or over 100 %, no result at all
 */
export function checkCertificate(input: CertificateInput): Outcome<readonly CertificateRow[]> {
  return attempt(() => {
    const check = inspect()
    if (!LIME_CLASSES.includes(input.class))
      check.refuse({ field: 'class', code: 'unknown', value: input.class })
    refuseOtherClasses(input, check)
    const given = Object.entries(input.results).flatMap(([item, value]) =>
      value === undefined ? [] : [[item, value] as const],
    )
    if (given.length === 0) check.refuse({ field: 'results', code: 'empty' })
    for (const [item, value] of given) {
      const unit = CERTIFICATE_ITEMS[item as CertificateItem]
      if (unit === undefined) check.refuse({ field: `results.${item}`, code: 'unknown' })
      else
        check.number(`results.${item}`, value, unit === '%' ? { min: 0, max: 100, unit } : { min: 0, unit })
    }
    check.finish()
    const single = limitsOf(input)
    const rows: CertificateRow[] = []
    for (const item of Object.keys(CERTIFICATE_ITEMS) as CertificateItem[]) {
      const value = input.results[item] ?? null
      const limit = single[item]
      const declared = DECLARED_LIMITS[input.class]?.[item]
      if (limit !== undefined) rows.push(judge(item, value, 'single-result', limit))
      if (declared !== undefined) rows.push(judge(item, value, 'declared', declared))
    }
    return rows
  })
}

/** A reactivity class must be one that the table lists for this lime, and neither class an unknown word. */
function refuseOtherClasses(
  { class: lime, reactivityClass, sizeClass }: CertificateInput,
  check: Inspection,
) {
  const listed: readonly string[] | undefined =
    reactivityClass === undefined ? undefined : (REACTIVITY_LIMITS[reactivityClass]?.classes ?? [])
  if (listed !== undefined && !listed.includes(lime))
    check.refuse({
      field: 'reactivityClass',
      code: 'inconsistent',
      value: reactivityClass ?? '',
      limit: lime,
    })
  if (sizeClass !== undefined && SIZE_LIMITS[sizeClass] === undefined)
    check.refuse({ field: 'sizeClass', code: 'unknown', value: sizeClass })
}

const limitsOf = ({ class: lime, reactivityClass, sizeClass }: CertificateInput): ClassLimits => ({
  ...SINGLE_RESULT_LIMITS[lime],
  ...(reactivityClass !== undefined && { reactivity: { max: REACTIVITY_LIMITS[reactivityClass].max } }),
  ...(sizeClass !== undefined && SIZE_LIMITS[sizeClass]),
})

function judge(
  item: CertificateItem,
  value: number | null,
  kind: CertificateRow['kind'],
  limit: CertificateLimit,
): CertificateRow {
  const inside =
    value !== null && value >= (limit.min ?? Number.NEGATIVE_INFINITY) && value <= (limit.max ?? Infinity)
  const judged = inside ? 'meets' : 'breaks'
  const settled = limit.unsure === undefined ? judged : 'not-verified'
  return {
    item,
    unit: CERTIFICATE_ITEMS[item],
    value,
    kind,
    min: limit.min ?? null,
    max: limit.max ?? null,
    outcome: value === null ? 'not-given' : settled,
    unsure: limit.unsure ?? null,
    basis: limit.unsure === 'memory' ? 'memory' : 'quoted',
    source: kind === 'single-result' ? SINGLE_RESULT_SOURCE : DECLARED_SOURCE,
  }
}
