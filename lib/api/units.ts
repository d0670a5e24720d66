import { termsWithin } from '#lib/content/term-tree.ts'

/** A unit term and every narrower one. */
export const unitsWithin = (unit: string): string[] => termsWithin('units', unit)
