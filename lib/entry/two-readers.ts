import type { BodyOf, WrittenKind } from './body.ts'

/**
 * Whether two reviewers must read this before it is published: where somebody says that protected fabric came to
 * harm, where that is no longer said, and for a row of the tables, on which recipes will rest.
 *
 * @param before the body that it takes the place of; null for a first one
 */
export function needsTwoReaders<K extends WrittenKind>(
  kind: K,
  body: BodyOf<K>,
  before: BodyOf<K> | null,
): boolean {
  if (kind === 'row') return true
  return tellsOfHarm(body) || (before !== null && tellsOfHarm(before))
}

const tellsOfHarm = (body: BodyOf<WrittenKind>): boolean =>
  'harm' in body && body.harm?.protectedFabric === true
