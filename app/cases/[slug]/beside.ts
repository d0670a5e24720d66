import type { Actor } from '#lib/access/actor.ts'
import { may } from '#lib/access/policy.ts'
import { authorsOf } from '#lib/db/authors.ts'
import { disputedAmong } from '#lib/db/disputes.ts'
import { answersTo, type Deed } from '#lib/db/versions.ts'
import { type NameOf, namesOf } from '../../_ui/author.ts'

/** What stands beside the visits of a case: who wrote them, what the case's author answered, what is disputed. */
export interface Beside {
  readonly nameOf: NameOf
  readonly answers: readonly (Deed & { readonly entryId: string })[]
  readonly disputed: ReadonlySet<string>
  /** Visits of others that the reader, as the author of the case, may answer beside. */
  readonly answerable: ReadonlySet<string>
}

/** Reads it for these visits to a case. */
export async function besideVisits(
  actor: Actor,
  caseEntryId: string,
  visits: readonly { readonly entryId: string; readonly author: string }[],
): Promise<Beside> {
  const ids = visits.map(({ entryId }) => entryId)
  const [answers, disputed, caseAuthorKeys] = await Promise.all([
    answersTo(ids),
    disputedAmong(ids),
    actor.kind === 'member' ? authorsOf(caseEntryId) : [],
  ])
  const mayAnswer = may(actor, 'answer', { caseAuthorKeys })
  const ofOthers = visits.filter(({ author }) => actor.kind === 'member' && author !== actor.key)
  const nameOf = await namesOf([...visits.map(({ author }) => author), ...answers.map(({ byKey }) => byKey)])
  const answerable = new Set(mayAnswer ? ofOthers.map(({ entryId }) => entryId) : [])
  return { nameOf, answers, disputed, answerable }
}
