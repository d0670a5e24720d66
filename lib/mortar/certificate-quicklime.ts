import type { ClassLimits, LimeClass } from './certificate-limits.ts'

/** Reactivity classes of quicklime: the longest time of a single result, and the limes that the table lists it for. */
export const REACTIVITY_LIMITS = {
  R5: { max: 12, classes: ['CL 90', 'CL 80', 'DL 90-5'] },
  R4: { max: 30, classes: ['CL 90', 'CL 80'] },
  R3: { max: 30, classes: ['CL 80'] },
  R2: { max: 30, classes: ['CL 70', 'DL 90-30', 'DL 90-5', 'DL 85-30'] },
  R1: { max: 30, classes: ['DL 80-5'] },
} as const satisfies Record<string, { readonly max: number; readonly classes: readonly LimeClass[] }>
export type ReactivityClass = keyof typeof REACTIVITY_LIMITS

/** Size classes of quicklime: the least that a single result may pass, %. */
export const SIZE_LIMITS = {
  P1: { passing2mm: { min: 99 }, passing200um: { min: 94 }, passing90um: { min: 80 } },
  P2: {
    passing5mm: { min: 99 },
    passing2mm: { min: 94 },
    passing200um: { min: 65 },
    passing90um: { min: 45 },
  },
  P3: { passing5mm: { min: 99 }, passing2mm: { min: 94 }, passing90um: { min: 25 } },
  P4: { passing10mm: { min: 99 }, passing5mm: { min: 94 } },
} as const satisfies Record<string, ClassLimits>
export type SizeClass = keyof typeof SIZE_LIMITS
