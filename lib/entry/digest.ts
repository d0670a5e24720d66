import { createHash } from 'node:crypto'
import canonicalize from 'canonicalize'

/** All that a revision's digest covers. `parentDigest` is the digest of the revision before, null for the first. */
export interface RevisionLink {
  readonly entryId: string
  readonly number: number
  readonly bodyDigest: string
  readonly parentDigest: string | null
  readonly shape: number
  readonly authorKey: string
  readonly createdAt: Date
  readonly note: string
}

/** All that a decision's digest covers. `parentDigest` is that of the entry's decision before, null for the first. */
export interface DecisionLink {
  readonly entryId: string
  readonly number: number
  readonly revisionDigest: string
  readonly parentDigest: string | null
  readonly outcome: string
  readonly reviewerKey: string
  readonly checklist: unknown
  readonly words: string
  /** What only some decisions say; absent or null, it is no part of the digest. */
  readonly particulars?: unknown
  readonly at: Date
}

/**
 * A JSON value in canonical form (RFC 8785): the same text for every order of keys and way of writing a number.
 *
 * @throws Error for what JSON cannot hold
 */
export function canonicalJson(value: unknown): string {
  const canonical = canonicalize(value)
  if (canonical === undefined) throw new TypeError('only a JSON value has a canonical form')
  return canonical
}

/** SHA-256 (64 hexadecimal digits) of a JSON value in canonical form. */
export const digestOf = (value: unknown): string =>
  createHash('sha256').update(canonicalJson(value), 'utf8').digest('hex')

/** Digest of a revision; it takes in the one before it, so that none can be changed alone. */
export const revisionDigest = (link: RevisionLink): string =>
  digestOf({
    entryId: link.entryId,
    number: link.number,
    bodyDigest: link.bodyDigest,
    parentDigest: link.parentDigest,
    shape: link.shape,
    authorKey: link.authorKey,
    createdAt: link.createdAt.toISOString(),
    note: link.note,
  })

/** Digest of a decision; it takes in the decision before it and the revision that it is about. */
export const decisionDigest = (link: DecisionLink): string =>
  digestOf({
    entryId: link.entryId,
    number: link.number,
    revisionDigest: link.revisionDigest,
    parentDigest: link.parentDigest,
    outcome: link.outcome,
    reviewerKey: link.reviewerKey,
    checklist: link.checklist,
    words: link.words,
    at: link.at.toISOString(),
    ...(link.particulars !== undefined && link.particulars !== null && { particulars: link.particulars }),
  })
