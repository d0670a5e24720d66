/** What stands where a body was erased for a lawful reason. Its digest, the ground and a decision stay. */
export const ERASED = { erased: true } as const

/** Whether a stored body is the mark of an erased one. */
export const isErased = (body: unknown): boolean =>
  typeof body === 'object' &&
  body !== null &&
  (body as { erased?: unknown }).erased === true &&
  Object.keys(body).length === 1

/** Why the law may ask for something to be erased: somebody's personal data, the place of a private home, the order of
 * a court or an authority, somebody else's rights in it, danger to somebody. */
export const GROUNDS = ['personal-data', 'private-place', 'order', 'rights', 'danger'] as const
export type Ground = (typeof GROUNDS)[number]
