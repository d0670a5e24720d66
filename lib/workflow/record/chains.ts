import type { Head } from '#lib/db/heads.ts'
import type { History } from '#lib/db/history.ts'
import { decisionDigest, digestOf, revisionDigest } from '#lib/entry/digest.ts'
import { isErased } from '#lib/entry/erased.ts'
import { replay } from '#lib/entry/state.ts'

/** One thing that is wrong with the record, and where. */
export interface Finding {
  readonly what:
    | 'altered-body'
    | 'broken-chain'
    | 'missing-revision'
    | 'missing-decision'
    | 'missing-entry'
    | 'wrong-state'
    | 'rewritten'
    | 'untrusted-heads'
    | 'wrong-projection'
    | 'missing-photo'
    | 'altered-photo'
  /** `slug revision 3`, a file or a table. */
  readonly where: string
  readonly detail: string
}

/** Everything in an entry's history that its own digests, numbers and decisions contradict. */
export function checkHistory(entry: History): Finding[] {
  const findings = [...checkRevisions(entry), ...checkDecisions(entry)]
  return findings.length > 0 ? findings : checkStates(entry)
}

/** `slug revision 3` for every body that a decision of the history erased: gone lawfully, and not tampered with. */
export const erasedIn = ({ slug, revisions }: History): string[] =>
  revisions.filter(({ body }) => isErased(body)).map(({ number }) => `${slug} revision ${number}`)

function checkRevisions({ slug, revisions, decisions }: History): Finding[] {
  const findings: Finding[] = []
  const erasures = new Set(
    decisions.filter(({ outcome }) => outcome === 'erase').map(({ revisionId }) => revisionId),
  )
  if (revisions.length === 0)
    findings.push({ what: 'missing-revision', where: slug, detail: 'the entry has no revision' })
  let parentDigest: string | null = null
  for (const [index, revision] of revisions.entries()) {
    const where = `${slug} revision ${revision.number}`
    if (revision.number !== index + 1) {
      findings.push({ what: 'missing-revision', where: slug, detail: `revision ${index + 1} is not there` })
      return findings
    }
    if (erasures.has(revision.id) !== isErased(revision.body))
      findings.push({ what: 'altered-body', where, detail: 'its body and its erasure do not agree' })
    else if (!isErased(revision.body) && digestOf(revision.body) !== revision.bodyDigest)
      findings.push({ what: 'altered-body', where, detail: 'the body is not the one that was submitted' })
    if (revisionDigest({ ...revision, parentDigest }) !== revision.digest)
      findings.push({ what: 'broken-chain', where, detail: 'its digest does not fit what it says' })
    parentDigest = revision.digest
  }
  return findings
}

function checkDecisions({ slug, revisions, decisions }: History): Finding[] {
  const findings: Finding[] = []
  const digests = new Map(revisions.map(({ id, digest }) => [id, digest]))
  let parentDigest: string | null = null
  for (const [index, decision] of decisions.entries()) {
    const where = `${slug} decision ${decision.number}`
    if (decision.number !== index + 1) {
      findings.push({ what: 'missing-decision', where: slug, detail: `decision ${index + 1} is not there` })
      return findings
    }
    const about = digests.get(decision.revisionId)
    if (
      about === undefined ||
      decisionDigest({ ...decision, revisionDigest: about, parentDigest }) !== decision.digest
    )
      findings.push({ what: 'broken-chain', where, detail: 'its digest does not fit what it says' })
    parentDigest = decision.digest
  }
  return findings
}

/** Where the entry stands must be where its decisions put it. */
function checkStates({ slug, revisions, decisions, publishedRevisionId, withdrawnAt }: History): Finding[] {
  const numbers = new Map(revisions.map(({ id, number }) => [id, number]))
  const wrong = (where: string, detail: string): Finding => ({ what: 'wrong-state', where, detail })
  try {
    const told = replay(
      [...numbers.values()],
      decisions.map(({ revisionId, outcome, at }) => ({
        revision: numbers.get(revisionId) ?? 0,
        outcome,
        at,
      })),
    )
    const published = publishedRevisionId === null ? null : (numbers.get(publishedRevisionId) ?? 0)
    return [
      ...revisions
        .filter(({ number, state }) => told.states.get(number) !== state)
        .map(({ number, state }) =>
          wrong(
            `${slug} revision ${number}`,
            `it is ${state}; its decisions make it ${told.states.get(number)}`,
          ),
        ),
      ...(published === told.published
        ? []
        : [
            wrong(
              slug,
              `revision ${published ?? 'none'} is published; its decisions say ${told.published ?? 'none'}`,
            ),
          ]),
      ...(withdrawnAt?.getTime() === told.withdrawnAt?.getTime()
        ? []
        : [wrong(slug, 'when it was withdrawn is not what its decisions say')]),
    ]
  } catch (error) {
    if (error instanceof RangeError) return [wrong(slug, error.message)]
    throw error
  }
}

/** What a history must still hold to be the one whose head was once signed. */
export function checkAgainstHead(head: Head, entry: History | undefined, signed: string): Finding[] {
  if (entry === undefined)
    return [{ what: 'missing-entry', where: head.slug, detail: `it was there on ${signed}, and is gone` }]
  const revision = entry.revisions[head.revisions - 1]
  const decision = entry.decisions[head.decisions - 1]
  return [
    ...(entry.slug === head.slug && entry.kind === head.kind
      ? []
      : [
          {
            what: 'rewritten' as const,
            where: entry.slug,
            detail: `on ${signed} it was the ${head.kind} ${head.slug}`,
          },
        ]),
    ...compare(
      head.revision,
      revision?.digest,
      'revision',
      `${head.slug} revision ${head.revisions}`,
      signed,
    ),
    ...(head.decision === null
      ? []
      : compare(
          head.decision,
          decision?.digest,
          'decision',
          `${head.slug} decision ${head.decisions}`,
          signed,
        )),
  ]
}

function compare(
  signedDigest: string,
  digest: string | undefined,
  kind: 'revision' | 'decision',
  where: string,
  signed: string,
): Finding[] {
  if (digest === undefined)
    return [{ what: `missing-${kind}`, where, detail: `it was there on ${signed}, and is gone` }]
  if (digest !== signedDigest)
    return [{ what: 'rewritten', where, detail: `its digest is not the one signed on ${signed}` }]
  return []
}
