import { Refusal } from '#lib/errors.ts'
import type { Actor, Member, Role, System } from './actor.ts'

/** What a right is asked about: a decision, about somebody's revision; the others, about nothing further. */
interface Subjects {
  submit: undefined
  writeDraft: undefined
  /** Of a revision: whoever wrote a part of it, or any other revision of its entry. */
  decide: { readonly authorKeys: readonly string[] }
  review: undefined
  readUnpublished: { readonly authorKeys: readonly string[] }
  dispute: undefined
  settle: { readonly authorKeys: readonly string[]; readonly disputerKeys: readonly string[] }
  /** Of a visit: whoever wrote the case it was made to, and whoever wrote the visit. */
  answer: { readonly caseAuthorKeys: readonly string[]; readonly visitAuthorKeys: readonly string[] }
  strike: undefined
  remind: undefined
  withdraw: undefined
  restore: undefined
  erase: undefined
  nameRoles: undefined
  readAudit: undefined
  uploadPhoto: undefined
  seeAnyPhoto: undefined
  keepSheet: undefined
  ownSheet: { readonly ownerKey: string }
}
export type Verb = keyof Subjects

/** One of these roles (`any` is every account), and what else must hold. */
interface Rule<V extends Verb> {
  readonly roles: readonly Role[] | 'any'
  readonly when?: (member: Member, subject: Subjects[V]) => boolean
}

/** Everything a member may do. What is not here nobody may; reading what is published needs no right. */
const MEMBERS: { readonly [V in Verb]: Rule<V> } = {
  submit: { roles: ['contributor'], when: (member) => member.unconfirmed !== true },
  writeDraft: { roles: ['contributor'] },
  decide: { roles: ['reviewer'], when: (member, { authorKeys }) => !authorKeys.includes(member.key) },
  review: { roles: ['reviewer', 'steward'] },
  readUnpublished: {
    roles: 'any',
    when: ({ key, roles }, { authorKeys }) =>
      authorKeys.includes(key) || roles.includes('reviewer') || roles.includes('steward'),
  },
  dispute: { roles: 'any', when: (member) => member.unconfirmed !== true },
  settle: {
    roles: ['reviewer'],
    when: ({ key }, { authorKeys, disputerKeys }) => !authorKeys.includes(key) && !disputerKeys.includes(key),
  },
  answer: {
    roles: 'any',
    when: ({ key, unconfirmed }, { caseAuthorKeys, visitAuthorKeys }) =>
      unconfirmed !== true && caseAuthorKeys.includes(key) && !visitAuthorKeys.includes(key),
  },
  strike: { roles: ['steward'] },
  remind: { roles: 'any' },
  withdraw: { roles: ['steward'] },
  restore: { roles: ['steward'] },
  erase: { roles: ['steward'] },
  nameRoles: { roles: ['steward'] },
  readAudit: { roles: ['steward'] },
  uploadPhoto: { roles: ['contributor'] },
  seeAnyPhoto: { roles: ['reviewer', 'steward'] },
  keepSheet: { roles: 'any' },
  // To read, name and delete it: nobody's but the owner's, whatever their role.
  ownSheet: { roles: 'any', when: ({ key }, { ownerKey }) => key === ownerKey },
}

/** The server's own commands take down and put back; they write nothing and judge nothing. */
const SYSTEM_MAY: readonly Verb[] = ['withdraw', 'restore']

/** Whether this person may do this: to choose which buttons to draw. */
export function may<V extends Verb>(actor: Actor, verb: V, subject: Subjects[V]): boolean {
  if (actor.kind === 'system') return SYSTEM_MAY.includes(verb)
  return mayEver(actor, verb) && MEMBERS[verb].when?.(actor, subject) !== false
}

/** Whether there is anything that this person may do it to: who passes a door that leads to it. */
export function mayEver(actor: Actor, verb: Verb): actor is Member {
  const { roles } = MEMBERS[verb]
  return actor.kind === 'member' && (roles === 'any' || roles.some((role) => actor.roles.includes(role)))
}

/**
 * The same question where the deed is done.
 *
 * @returns the actor, known to be somebody
 * @throws Refusal `forbidden`
 */
export function must<V extends Verb>(actor: Actor, verb: V, subject: Subjects[V]): Member | System {
  if (actor.kind === 'guest' || !may(actor, verb, subject))
    throw new Refusal(
      'forbidden',
      mayOnceConfirmed(actor, verb, subject) ? CONFIRM : `You may not ${spaced(verb)} this.`,
    )
  return actor
}

const spaced = (verb: Verb) => verb.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`)

const mayOnceConfirmed = <V extends Verb>(actor: Actor, verb: V, subject: Subjects[V]): boolean =>
  actor.kind === 'member' && may({ ...actor, unconfirmed: false }, verb, subject)

const CONFIRM = 'Confirm your address first: the page of your account sends a link to it.'
