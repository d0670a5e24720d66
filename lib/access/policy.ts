import { Refusal } from '#lib/errors.ts'
import type { Actor, Member, Role, System } from './actor.ts'

/** What a right is asked about: a decision, about somebody's revision; the others, about nothing further. */
interface Subjects {
  submit: undefined
  decide: { readonly authorKey: string }
  withdraw: undefined
  restore: undefined
}
export type Verb = keyof Subjects

type Rule<V extends Verb> = (member: Member, subject: Subjects[V]) => boolean

const has = (member: Member, role: Role) => member.roles.includes(role)

/** Everything a member may do. What is not here nobody may; reading what is published needs no right. */
const MEMBERS: { readonly [V in Verb]: Rule<V> } = {
  submit: (member) => has(member, 'contributor'),
  decide: (member, { authorKey }) => has(member, 'reviewer') && authorKey !== member.key,
  withdraw: (member) => has(member, 'steward'),
  restore: (member) => has(member, 'steward'),
}

/** The server's own commands take down and put back; they write nothing and judge nothing. */
const SYSTEM_MAY: readonly Verb[] = ['withdraw', 'restore']

/** Whether this person may do this: to choose which buttons to draw. */
export function may<V extends Verb>(actor: Actor, verb: V, subject: Subjects[V]): boolean {
  if (actor.kind === 'system') return SYSTEM_MAY.includes(verb)
  return actor.kind === 'member' && MEMBERS[verb](actor, subject) === true
}

/**
 * The same question where the deed is done.
 *
 * @returns the actor, known to be somebody
 * @throws Refusal `forbidden`
 */
export function must<V extends Verb>(actor: Actor, verb: V, subject: Subjects[V]): Member | System {
  if (actor.kind === 'guest' || !may(actor, verb, subject))
    throw new Refusal('forbidden', `You may not ${verb} this.`)
  return actor
}
