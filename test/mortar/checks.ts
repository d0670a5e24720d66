import type { OutsideCheck } from './check.ts'
import { LIME_CHECKS } from './checks-lime.ts'
import { QUANTITY_CHECKS } from './checks-quantities.ts'

/** What the world outside says about the core sums. Figures from memory feed none of it. */
export const CORE_CHECKS: readonly OutsideCheck[] = [...LIME_CHECKS, ...QUANTITY_CHECKS]
