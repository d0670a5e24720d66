import {
  CERTIFICATE_ITEMS,
  type CertificateItem,
  type CertificateLimit,
  DECLARED_LIMITS,
  DECLARED_SOURCE,
  type LimeClass,
  SINGLE_RESULT_LIMITS,
  SINGLE_RESULT_SOURCE,
} from './certificate-limits.ts'
import { attempt, type Outcome } from './fault.ts'
import { inspect } from './inspect.ts'
import type { Basis } from './range.ts'

export interface CertificateInput {
  readonly class: LimeClass
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
    const single = SINGLE_RESULT_LIMITS[input.class]
    if (single === undefined) check.refuse({ field: 'class', code: 'unknown', value: input.class })
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
