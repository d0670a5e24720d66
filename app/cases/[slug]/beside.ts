import type { Actor, Member } from '#lib/access/actor.ts'
import { may } from '#lib/access/policy.ts'
import { authorsBehind, writtenInBy } from '#lib/db/authors.ts'
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

/** The case, and its revision published now. */
interface Visited {
  readonly entryId: string
  readonly latest: number
}

/** Reads it for these visits to a case. */
export async function besideVisits(
  actor: Actor,
  visited: Visited,
  visits: readonly { readonly entryId: string; readonly author: string }[],
): Promise<Beside> {
  const ids = visits.map(({ entryId }) => entryId)
  const [answers, disputed, answerable] = await Promise.all([
    answersTo(ids),
    disputedAmong(ids),
    actor.kind === 'member' ? answerableBy(actor, visited, ids) : new Set<string>(),
  ])
  const nameOf = await namesOf([...visits.map(({ author }) => author), ...answers.map(({ byKey }) => byKey)])
  return { nameOf, answers, disputed, answerable }
}

async function answerableBy(
  member: Member,
  { entryId, latest }: Visited,
  visitIds: readonly string[],
): Promise<ReadonlySet<string>> {
  const [caseAuthorKeys, own] = await Promise.all([
    authorsBehind(entryId, latest),
    writtenInBy(member.key, visitIds),
  ])
  const mayAnswer = (id: string) =>
    may(member, 'answer', { caseAuthorKeys, visitAuthorKeys: own.has(id) ? [member.key] : [] })
  return new Set(visitIds.filter(mayAnswer))
}
