import { blendSands } from '#lib/mortar/sieve-blend.ts'

export type BlendSums = typeof blendSands

/**
 * The sums of a blend. A server has them at hand; a browser fetches them once somebody blends, since they bring a
 * library for matrices along. `#app/blend-sums.ts` in package.json names blend-sums-browser.ts for browsers.
 */
export const blendSums = (): BlendSums => blendSands

export const areBlendSumsHere = (): boolean => true

/** Fetches them, in a browser; resolves with whether they came, the same promise each time. Undefined on a server. */
export const fetchBlendSums = (): Promise<boolean> | undefined => undefined
