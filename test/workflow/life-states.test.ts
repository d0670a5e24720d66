import { v4 } from 'uuid'
import { describe, expect, it } from 'vitest'
import { type Actor, GUEST, type Member, SYSTEM } from '#lib/access/actor.ts'
import { db } from '#lib/db/client.ts'
import { publishing } from '#lib/db/publishing.ts'
import { STEPS } from '#lib/entry/state.ts'
import { decide } from '#lib/workflow/decide.ts'
import { answerDispute, dispute, disputeIn } from '#lib/workflow/dispute.ts'
import { submit } from '#lib/workflow/submit.ts'
import { verify } from '#lib/workflow/verify.ts'
import { restore, withdraw } from '#lib/workflow/withdraw.ts'
import {
  CONTRIBUTOR,
  makeRecipe,
  makeSubmission,
  REFERENCES,
  REVIEWER,
  STEWARD,
  verdictOn,
} from '../support/make.ts'

const member = (key: string, ...roles: Member['roles']): Member => ({ kind: 'member', key, roles })
const OTHER_REVIEWER = member('reviewer-2', 'reviewer')

/** Everybody who may come, in every part. */
const ACTORS: Readonly<Record<string, Actor>> = {
  guest: GUEST,
  reader: member('reader-1'),
  author: CONTRIBUTOR,
  'another contributor': member('mason-9', 'contributor'),
  'the reviewing author': member('mason-1', 'contributor', 'reviewer'),
  reviewer: OTHER_REVIEWER,
  steward: STEWARD,
  'the disputing reviewer': member('disputer', 'reviewer'),
  'the server': SYSTEM,
}

/** Every state that a revision, and its entry, can be in, and how it gets there. */
const STATES: Readonly<Record<string, (slug: string) => Promise<unknown>>> = {
  submitted: async () => {},
  returned: (slug) => decide(REVIEWER, verdictOn({ slug, number: 1 }, 'return')),
  declined: (slug) => decide(REVIEWER, verdictOn({ slug, number: 1 }, 'decline')),
  published: (slug) => decide(REVIEWER, verdictOn({ slug, number: 1 })),
  disputed: async (slug) => {
    await decide(REVIEWER, verdictOn({ slug, number: 1 }))
    // Below the bound of a day's disputes, which is not what is tested here.
    await publishing((tx) => disputeIn(tx, member('disputer'), said(slug)))
  },
  superseded: async (slug) => {
    await decide(REVIEWER, verdictOn({ slug, number: 1 }))
    await submit(CONTRIBUTOR, makeSubmission({ slug, basedOn: 1 }), REFERENCES)
    await decide(REVIEWER, verdictOn({ slug, number: 2 }))
  },
  withdrawn: async (slug) => {
    await decide(REVIEWER, verdictOn({ slug, number: 1 }))
    await withdraw(STEWARD, { key: v4(), slug, words: 'Taken down.' })
  },
}

const said = (slug: string) => ({ key: v4(), slug, words: 'For a reason.' })
const lastDispute = async (slug: string) => {
  const { _max } = await db().decision.aggregate({ where: { entry: { slug } }, _max: { number: true } })
  return _max.number ?? 1
}

/** Everything that can be done to revision 1, or to its entry. */
const ACTIONS: Readonly<Record<string, (actor: Actor, slug: string) => Promise<unknown>>> = {
  publish: (actor, slug) => decide(actor, verdictOn({ slug, number: 1 })),
  return: (actor, slug) => decide(actor, verdictOn({ slug, number: 1 }, 'return')),
  decline: (actor, slug) => decide(actor, verdictOn({ slug, number: 1 }, 'decline')),
  withdraw: (actor, slug) => withdraw(actor, said(slug)),
  restore: (actor, slug) => restore(actor, said(slug)),
  dispute: (actor, slug) => dispute(actor, said(slug)),
  settle: async (actor, slug) =>
    answerDispute(actor, { ...said(slug), outcome: 'settle', read: await lastDispute(slug) }),
  uphold: async (actor, slug) =>
    answerDispute(actor, { ...said(slug), outcome: 'uphold', read: await lastDispute(slug) }),
  revise: (actor, slug) =>
    submit(actor, makeSubmission({ slug, basedOn: 1, body: makeRecipe() }), REFERENCES),
}

const REVIEWERS = ['reviewer', 'the disputing reviewer']
const JUDGE = { in: ['submitted'], by: REVIEWERS }
const PUBLIC = ['published', 'disputed', 'superseded']

/**
 * The whole machine, written by hand: in which states each action is taken, and from whom. Everything else is refused:
 * the wrong person as forbidden, the wrong state as a conflict or as what is not there.
 */
const MACHINE: Readonly<Record<string, { in: readonly string[]; by: readonly string[] }>> = {
  publish: JUDGE,
  return: JUDGE,
  decline: JUDGE,
  withdraw: { in: PUBLIC, by: ['steward', 'the server'] },
  restore: { in: ['withdrawn'], by: ['steward', 'the server'] },
  dispute: { in: PUBLIC, by: Object.keys(ACTORS).filter((who) => who !== 'guest' && who !== 'the server') },
  settle: { in: ['disputed'], by: ['reviewer'] },
  uphold: { in: ['disputed'], by: ['reviewer'] },
  revise: {
    in: ['submitted', 'returned', 'declined', 'published', 'disputed'],
    by: ['author', 'another contributor', 'the reviewing author'],
  },
}

describe('every action, in every state, by everybody', () => {
  it('knows every outcome that moves a state', () => {
    const moving = Object.entries(STEPS).filter(([, step]) => step !== null && step.from !== step.to)
    expect(moving.map(([outcome]) => outcome).filter((outcome) => !(outcome in ACTIONS))).toEqual([])
  })

  it.each(Object.keys(ACTIONS))(
    '%s is taken where and from whom the table says, and nowhere else',
    async (action) => {
      const rule = MACHINE[action]
      const attempt = ACTIONS[action]
      if (rule === undefined || attempt === undefined) throw new Error(`no rule for ${action}`)
      const wrong: string[] = []
      for (const [state, reach] of Object.entries(STATES)) {
        const isTaken = (who: string) =>
          rule.in.includes(state) &&
          rule.by.includes(who) &&
          // Whoever disputes an entry may not dispute it again before it is answered.
          !(action === 'dispute' && state === 'disputed' && who === 'the disputing reviewer')
        const refused = Object.entries(ACTORS).filter(([who]) => !isTaken(who))
        const taken = Object.entries(ACTORS).filter(([who]) => isTaken(who))
        // Who is refused changes nothing, so one entry will do for all of them.
        const shared = await makeIn(reach)
        for (const [who, actor] of refused) {
          const outcome = await outcomeOf(attempt(actor, shared))
          // The person is asked about first: one who may never do it learns nothing of the state.
          const right = rule.by.includes(who)
            ? ['conflict', 'not-found']
            : ['forbidden', 'conflict', 'not-found']
          const exact = !rule.by.includes(who) && rule.in.includes(state) ? ['forbidden'] : right
          if (!exact.includes(outcome)) wrong.push(`${who}, ${state}: ${outcome}`)
        }
        for (const [who, actor] of taken) {
          const slug = await makeIn(reach)
          const before = await bodies(slug)
          const outcome = await outcomeOf(attempt(actor, slug))
          if (outcome !== 'done') wrong.push(`${who}, ${state}: ${outcome}`)
          if (JSON.stringify((await bodies(slug)).slice(0, before.length)) !== JSON.stringify(before))
            wrong.push(`${who}, ${state}: a body changed`)
        }
      }
      expect(wrong).toEqual([])
    },
    // A hundred entries and more; a busy machine takes minutes for it.
    300_000,
  )

  it('leaves a record that verifies', async () => {
    expect((await verify('no-such-folder')).findings).toEqual([])
  })
})

const bodies = (slug: string) =>
  db().revision.findMany({
    where: { entry: { slug } },
    orderBy: { number: 'asc' },
    select: { number: true, body: true, digest: true, note: true, authorKey: true },
  })

async function makeIn(reach: (slug: string) => Promise<unknown>): Promise<string> {
  const slug = `state-${v4()}`
  await submit(CONTRIBUTOR, makeSubmission({ slug }), REFERENCES)
  await reach(slug)
  return slug
}

const outcomeOf = (attempt: Promise<unknown>): Promise<string> =>
  attempt.then(
    () => 'done',
    (error: { code?: string }) => error.code ?? 'fault',
  )
