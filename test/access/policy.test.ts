import { describe, expect, it } from 'vitest'
import { type Actor, GUEST, type Role, SYSTEM } from '#lib/access/actor.ts'
import { may, must, type Verb } from '#lib/access/policy.ts'
import { Refusal } from '#lib/errors.ts'

const member = (...roles: readonly string[]): Actor => ({ kind: 'member', key: 'me', roles: roles as Role[] })

/** Who may do what: the whole table. `other` and `own` say whose revision is decided on. */
const TABLE: readonly (readonly [who: string, actor: Actor, allowed: readonly string[]])[] = [
  ['a guest', GUEST, []],
  ['a member without a role', member(), ['keepSheet', 'ownSheet own']],
  ['a contributor', member('contributor'), ['submit', 'uploadPhoto', 'keepSheet', 'ownSheet own']],
  ['a reviewer', member('reviewer'), ['decide other', 'seeAnyPhoto', 'keepSheet', 'ownSheet own']],
  [
    'a reviewer who also contributes',
    member('contributor', 'reviewer'),
    ['submit', 'decide other', 'uploadPhoto', 'seeAnyPhoto', 'keepSheet', 'ownSheet own'],
  ],
  ['a steward', member('steward'), ['withdraw', 'restore', 'seeAnyPhoto', 'keepSheet', 'ownSheet own']],
  ["the server's own command", SYSTEM, ['withdraw', 'restore']],
  ['a member of an unknown role', member('emperor'), ['keepSheet', 'ownSheet own']],
]
const DEEDS = [
  'submit',
  'decide other',
  'decide own',
  'withdraw',
  'restore',
  'uploadPhoto',
  'seeAnyPhoto',
  'keepSheet',
  'ownSheet own',
  'ownSheet other',
]

function asked(actor: Actor, deed: string): boolean {
  const [verb, whose] = deed.split(' ') as [Verb, string | undefined]
  if (verb === 'ownSheet') return may(actor, verb, { ownerKey: whose === 'own' ? 'me' : 'another' })
  return verb === 'decide'
    ? may(actor, verb, { authorKeys: ['another', whose === 'own' ? 'me' : 'a third'] })
    : may(actor, verb, undefined)
}

describe('may(actor, verb, subject)', () => {
  it.each(TABLE)('lets %s do just what the table says', (_who, actor, allowed) => {
    expect(DEEDS.filter((deed) => asked(actor, deed))).toEqual(allowed)
  })

  it('refuses a kind of actor that nobody knows', () => {
    expect(may({ kind: 'ghost', key: 'me', roles: ['steward'] } as never, 'withdraw', undefined)).toBe(false)
  })
})

describe('may(member, answer, parties)', () => {
  const ask = (caseAuthorKeys: string[], visitAuthorKeys: string[], over: object = {}) =>
    may({ ...member(), ...over } as Actor, 'answer', { caseAuthorKeys, visitAuthorKeys })

  it('is for whoever wrote the case and no part of the visit, with a confirmed address', () => {
    expect(ask(['another', 'me'], ['a visitor'])).toBe(true)
    expect(ask(['another'], ['a visitor'])).toBe(false)
    expect(ask(['me'], ['me'])).toBe(false)
    expect(ask(['another', 'me'], ['a visitor', 'me'])).toBe(false)
    expect(ask(['me'], ['a visitor'], { unconfirmed: true })).toBe(false)
  })
})

describe('must(actor, verb, subject)', () => {
  it('gives the actor back when they may', () => {
    expect(must(SYSTEM, 'restore', undefined)).toBe(SYSTEM)
  })

  it('refuses as forbidden when they may not', () => {
    expect(() => must(GUEST, 'submit', undefined)).toThrow(expect.objectContaining({ code: 'forbidden' }))
    expect(() => must(member('reviewer'), 'decide', { authorKeys: ['me'] })).toThrow(Refusal)
  })
})
