import type { OutsideCheck } from '../mortar/check.ts'
import { AGREEMENT_CHECKS } from './checks-agreement.ts'
import { EXACT_CHECKS } from './checks-exact.ts'
import { SHARE_CHECKS } from './checks-shares.ts'
import { VISIT_CHECKS } from './checks-visits.ts'

/** What the world outside says about the statistics. Figures from memory feed none of it. */
export const EVIDENCE_CHECKS: readonly OutsideCheck[] = [
  ...EXACT_CHECKS,
  ...VISIT_CHECKS,
  ...SHARE_CHECKS,
  ...AGREEMENT_CHECKS,
]
