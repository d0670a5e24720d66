import { Refusal } from '#lib/errors.ts'

/** The longest page of a list. */
export const MOST = 100

/** How many rows a page has when so many are asked for. */
export const pageSize = (limit: number): number => Math.min(Math.max(1, Math.trunc(limit)), MOST)

/** What asking for the page after something that is not in the list gets. */
export const noSuchPage = (after: string): Refusal =>
  new Refusal('invalid', 'That page does not exist.', [{ field: 'after', code: 'unknown', value: after }])
