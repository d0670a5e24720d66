import { v4, v7 } from 'uuid'
import { describe, expect, it } from 'vitest'
import type { Member } from '#lib/access/actor.ts'
import { adaptationTree } from '#lib/db/adaptations.ts'
import { authorsBehind } from '#lib/db/authors.ts'
import { db } from '#lib/db/client.ts'
import { likelyDuplicates } from '#lib/db/duplicates.ts'
import { noticesFor } from '#lib/db/notices.ts'
import { checkProjections } from '#lib/db/projection/check.ts'
import { waitingRevisions } from '#lib/db/review.ts'
import { answersTo, entryHead, versionOf, versionsOf } from '#lib/db/versions.ts'
import { answerVisit, strike } from '#lib/workflow/answer.ts'
import { claim, release } from '#lib/workflow/claim.ts'
import { decide } from '#lib/workflow/decide.ts'
import { answerDispute, dispute } from '#lib/workflow/dispute.ts'
import { beginDraft } from '#lib/workflow/draft-begin.ts'
import { submitDraft } from '#lib/workflow/draft-submit.ts'
import { eraseBody } from '#lib/workflow/erase.ts'
import { submit } from '#lib/workflow/submit.ts'
import { verify } from '#lib/workflow/verify.ts'
import {
  CONTRIBUTOR,
  makeCase,
  makeRecipe,
  makeSubmission,
  makeVisit,
  OTHER,
  publish,
  REFERENCES,
  REVIEWER,
  STEWARD,
  verdictOn,
} from '../support/make.ts'

const SECOND: Member = { kind: 'member', key: 'reviewer-2', roles: ['reviewer'] }
const READER: Member = { kind: 'member', key: 'reader-1', roles: [] }
const READER_WHO_WRITES: Member = { kind: 'member', key: 'mason-3', roles: ['contributor'] }
const GUEST = { kind: 'guest' } as const
const forbidden = expect.objectContaining({ code: 'forbidden' })
const conflict = expect.objectContaining({ code: 'conflict' })
const said = (slug: string, words = 'For a reason.') => ({ key: v4(), slug, words })
const held = ({ revisionId }: { revisionId: string }) => ({ revisionId })
const send = (slug: string, body: unknown, over: object = {}) =>
  submit(CONTRIBUTOR, makeSubmission({ slug, body, ...over }), REFERENCES)

describe('decide(reviewer, judgement)', () => {
  it('asks two readers where protected fabric is said to have come to harm', async () => {
    const body = makeCase({
      harm: { protectedFabric: true, words: 'The hard joint took the stone with it.' },
    })
    const sent = await send('harmed', body, { kind: 'case' })
    const first = verdictOn(sent)
    expect((await decide(REVIEWER, first)).outcome).toBe('approve')
    expect(await decide(REVIEWER, first)).toMatchObject({ outcome: 'approve', repeated: true })
    await expect(decide(REVIEWER, verdictOn(sent))).rejects.toThrow(forbidden)
    expect((await db().entry.findUniqueOrThrow({ where: { slug: 'harmed' } })).publishedRevisionId).toBeNull()
    expect((await decide(SECOND, verdictOn(sent))).outcome).toBe('publish')
    expect(await db().caseIndex.count({ where: { slug: 'harmed' } })).toBe(1)
  })

  it('asks two readers also where an edit no longer says so', async () => {
    const harm = { protectedFabric: true, words: 'The hard joint took the stone with it.' }
    const first = await send('dropped', makeCase({ harm }), { kind: 'case' })
    for (const reader of [REVIEWER, SECOND]) await decide(reader, verdictOn(first))
    const edit = await send('dropped', makeCase({ title: 'Unharmed' }), { kind: 'case', basedOn: 1 })
    expect((await decide(REVIEWER, verdictOn(edit))).outcome).toBe('approve')
    expect((await db().caseIndex.findUniqueOrThrow({ where: { slug: 'dropped' } })).revision).toBe(1)
    expect((await decide(SECOND, verdictOn(edit))).outcome).toBe('publish')
    // Once it is gone, one reader is enough again.
    const next = await send('dropped', makeCase({ title: 'As before' }), { kind: 'case', basedOn: 2 })
    expect((await decide(REVIEWER, verdictOn(next))).outcome).toBe('publish')
  })

  it('lets nobody judge what grew from their work over any number of adaptations', async () => {
    const root: Member = { kind: 'member', key: 'root-author', roles: ['contributor', 'reviewer'] }
    await submit(root, makeSubmission({ slug: 'chain-0' }), REFERENCES)
    await decide(REVIEWER, verdictOn({ slug: 'chain-0', number: 1 }))
    for (let link = 1; link <= 4; link += 1)
      await publish('recipe', `chain-${link}`, makeRecipe({ adaptedFrom: `chain-${link - 1}@1` }))
    const last = await send('chain-5', makeRecipe({ adaptedFrom: 'chain-4@1' }))
    await expect(claim(root, held(last))).rejects.toThrow(forbidden)
    await expect(decide(root, verdictOn(last))).rejects.toThrow(forbidden)
    // A circle ends the search too.
    await publish('recipe', 'chain-0', makeRecipe({ adaptedFrom: 'chain-4@1' }), 1)
    await expect(decide(root, verdictOn(last))).rejects.toThrow(forbidden)
    expect((await decide(REVIEWER, verdictOn(last))).outcome).toBe('publish')
    await dispute(READER, said('chain-5'))
    const { disputed } = (await entryHead(GUEST, 'chain-5')) ?? {}
    expect(disputed).toBe(true)
    const ruling = { ...said('chain-5'), outcome: 'settle' as const, read: 2 }
    await expect(answerDispute(root, ruling)).rejects.toThrow(forbidden)
    // Its author hears of it; whose recipe it grew from is not told of what is no business of theirs.
    expect((await noticesFor(root.key)).notices.map(({ slug }) => slug)).not.toContain('chain-5')
  })

  it('lets nobody judge what grew from their work where a link of the chain was erased', async () => {
    const root: Member = { kind: 'member', key: 'lost-author', roles: ['contributor', 'reviewer'] }
    await submit(root, makeSubmission({ slug: 'lost-0' }), REFERENCES)
    await decide(REVIEWER, verdictOn({ slug: 'lost-0', number: 1 }))
    const id = v7()
    const start = { id, kind: 'recipe' as const, slug: null, basedOn: null, typed: {} }
    await beginDraft(CONTRIBUTOR, { ...start, adaptedFrom: 'lost-0@1' })
    const body = makeRecipe({ adaptedFrom: 'lost-0@1' })
    await submitDraft(CONTRIBUTOR, { id, version: 1, slug: 'lost-1', body, note: 'First.' }, REFERENCES)
    await decide(REVIEWER, verdictOn({ slug: 'lost-1', number: 1 }))
    const last = await send('lost-2', makeRecipe({ adaptedFrom: 'lost-1@1' }))
    await eraseBody(STEWARD, { ...said('lost-1'), number: 1, ground: 'rights' })
    await expect(decide(root, verdictOn(last))).rejects.toThrow(forbidden)
  })

  it('lets nobody judge what they wrote in part: an earlier version, or the recipe it is adapted from', async () => {
    const writes: Member = { kind: 'member', key: 'writing-reviewer', roles: ['contributor', 'reviewer'] }
    await submit(writes, makeSubmission({ slug: 'shared-work' }), REFERENCES)
    const theirs = await send('shared-work', makeRecipe({ title: 'Taken further' }), { basedOn: 1 }).catch(
      (error) => error,
    )
    // The first still waits, so the second is a version of it by another.
    expect(theirs).toMatchObject({ number: 2 })
    await expect(decide(writes, verdictOn(theirs))).rejects.toThrow(forbidden)
    await decide(REVIEWER, verdictOn(theirs))
    const adapted = await send('adapted-work', makeRecipe({ adaptedFrom: 'shared-work@2' }))
    const author: Member = { ...CONTRIBUTOR, roles: ['contributor', 'reviewer'] }
    await expect(decide(author, verdictOn(adapted))).rejects.toThrow(forbidden)
    await expect(decide(writes, verdictOn(adapted))).rejects.toThrow(forbidden)
  })

  it('lets nobody judge, hold or rule on an entry that they wrote any version of, an earlier or a later one', async () => {
    const writes: Member = { kind: 'member', key: 'later-hand', roles: ['contributor', 'reviewer'] }
    const first = await send('waits-behind', makeRecipe())
    await submit(writes, makeSubmission({ slug: 'waits-behind', basedOn: 1 }), REFERENCES)
    await expect(claim(writes, held(first))).rejects.toThrow(forbidden)
    await expect(decide(writes, verdictOn(first, 'decline'))).rejects.toThrow(forbidden)
    await decide(REVIEWER, verdictOn(first))
    await decide(REVIEWER, verdictOn({ slug: 'waits-behind', number: 2 }))
    const third = await send('waits-behind', makeRecipe({ title: 'A third hand' }), { basedOn: 2 })
    await expect(claim(writes, held(third))).rejects.toThrow(forbidden)
    await decide(REVIEWER, verdictOn(third))
    await dispute(READER, said('waits-behind'))
    const ruling = { ...said('waits-behind'), outcome: 'settle' as const, read: 4 }
    await expect(answerDispute(writes, ruling)).rejects.toThrow(forbidden)
    await answerDispute(SECOND, ruling)
  })

  it('keeps words on single fields with the decision, and tells the author', async () => {
    const sent = await send('returned-work', makeRecipe())
    const fields = [{ field: 'ingredients[sand-pit].parts', words: 'Damp or dry?' }]
    await decide(REVIEWER, { ...verdictOn(sent, 'return'), fields })
    const entry = await entryHead(CONTRIBUTOR, 'returned-work')
    if (entry === null) throw new Error('its author cannot see it')
    const version = await versionOf(CONTRIBUTOR, entry, 1)
    expect(version?.deeds[0]).toMatchObject({ outcome: 'return', byKey: REVIEWER.key, fields })
    const { notices } = await noticesFor(CONTRIBUTOR.key)
    expect(notices[0]).toMatchObject({ what: 'returned', slug: 'returned-work', isRead: false })
  })
})

describe('claim(reviewer, revision)', () => {
  it('keeps others from deciding until it is put back or runs out', async () => {
    const sent = await send('claimed', makeRecipe())
    await claim(REVIEWER, held(sent))
    await expect(claim(SECOND, held(sent))).rejects.toThrow(conflict)
    await expect(decide(SECOND, verdictOn(sent))).rejects.toThrow(conflict)
    await release(REVIEWER, held(sent))
    await claim(SECOND, held(sent))
    await db().claim.update({ where: { revisionId: sent.revisionId }, data: { until: new Date(0) } })
    await claim(REVIEWER, held(sent))
    expect((await decide(REVIEWER, verdictOn(sent))).outcome).toBe('publish')
    expect(await db().claim.count({ where: { revisionId: sent.revisionId } })).toBe(0)
  })

  it('goes to one of many who ask at once', async () => {
    const sent = await send('wanted', makeRecipe())
    const many = Array.from({ length: 12 }, (_, n): Member => ({ ...SECOND, key: `asker-${n}` }))
    const outcomes = await Promise.allSettled(many.map((reviewer) => claim(reviewer, held(sent))))
    expect(outcomes.filter(({ status }) => status === 'fulfilled')).toHaveLength(1)
  })

  it('is not for the author', async () => {
    const sent = await send('own-work', makeRecipe())
    await expect(claim({ ...CONTRIBUTOR, roles: ['contributor', 'reviewer'] }, held(sent))).rejects.toThrow(
      forbidden,
    )
  })
})

describe('waitingRevisions()', () => {
  it('lists the oldest first, a page at a time, and nothing twice', async () => {
    const before = (await waitingRevisions({}, { limit: 100 })).waiting.length
    for (let n = 0; n < 5; n++) await send(`queue-${n}`, makeRecipe({ title: `Queued ${n}` }))
    const seen: string[] = []
    for (let after: string | undefined; ; ) {
      const { waiting, next } = await waitingRevisions({}, { limit: 2, after })
      seen.push(...waiting.map(({ slug }) => slug))
      if (next === null) break
      after = next
    }
    expect(seen).toHaveLength(before + 5)
    expect(new Set(seen).size).toBe(seen.length)
    expect(seen.slice(-5)).toEqual(['queue-0', 'queue-1', 'queue-2', 'queue-3', 'queue-4'])
  })
})

describe('dispute(member, words)', () => {
  it('marks an entry until a reviewer answers, in the same transaction', async () => {
    await publish('recipe', 'doubtful', makeRecipe())
    const marked = async () =>
      (await db().recipeIndex.findUniqueOrThrow({ where: { slug: 'doubtful' } })).disputed
    const given = said('doubtful')
    const first = await dispute(READER, given)
    expect(await dispute(READER, given)).toEqual({ ...first, repeated: true })
    expect(await marked()).toBe(true)
    await expect(dispute(READER, said('doubtful'))).rejects.toThrow(conflict)
    const ruling = { ...said('doubtful'), outcome: 'settle' as const, read: 2 }
    // A further dispute that was not read is not answered unread.
    await dispute(OTHER, said('doubtful'))
    await expect(answerDispute(SECOND, ruling)).rejects.toThrow(conflict)
    await answerDispute(SECOND, { ...ruling, read: 3 })
    expect(await marked()).toBe(false)
    const told = async (key: string) =>
      (await noticesFor(key)).notices.map(({ what, slug }) => `${what} ${slug}`)
    expect(await told(OTHER.key)).toContain('settled doubtful')
    expect(await told(CONTRIBUTOR.key)).toEqual(
      expect.arrayContaining(['disputed doubtful', 'settled doubtful']),
    )
  })

  it('takes the entry down when it is upheld', async () => {
    await publish('recipe', 'wrong', makeRecipe())
    await dispute(READER, said('wrong'))
    await answerDispute(SECOND, { ...said('wrong'), outcome: 'uphold', read: 2 })
    const entry = await db().entry.findUniqueOrThrow({ where: { slug: 'wrong' } })
    expect(entry.withdrawnAt).not.toBeNull()
    expect(await db().recipeIndex.count({ where: { slug: 'wrong' } })).toBe(0)
  })

  it('of a visit throws doubt on its case', async () => {
    await publish('case', 'seen-wall', makeCase())
    await publish('visit', 'seen-wall-2010', makeVisit({ case: 'seen-wall' }))
    await dispute(READER, said('seen-wall-2010'))
    expect((await db().caseIndex.findUniqueOrThrow({ where: { slug: 'seen-wall' } })).disputed).toBe(true)
  })
})

describe('answerVisit(author of the case, words)', () => {
  it('stands beside the visit at once, and goes when a steward strikes it', async () => {
    await publish('case', 'answered-wall', makeCase())
    const visit = await submit(
      OTHER,
      makeSubmission({ kind: 'visit', slug: 'answered-visit', body: makeVisit({ case: 'answered-wall' }) }),
      REFERENCES,
    )
    await decide(REVIEWER, verdictOn(visit))
    const told = (await noticesFor(CONTRIBUTOR.key)).notices.map(({ what, slug }) => `${what} ${slug}`)
    expect(told).toContain('visited answered-visit')
    await expect(answerVisit(OTHER, said('answered-visit'))).rejects.toThrow(forbidden)
    await answerVisit(CONTRIBUTOR, said('answered-visit', 'The gutter had burst that week.'))
    const [answer] = await answersTo([visit.entryId])
    expect(answer).toMatchObject({ byKey: CONTRIBUTOR.key, words: 'The gutter had burst that week.' })
    await strike(STEWARD, { ...said('answered-visit'), deed: answer?.number ?? 0 })
    expect(await answersTo([visit.entryId])).toEqual([])
    await expect(strike(STEWARD, { ...said('answered-visit'), deed: answer?.number ?? 0 })).rejects.toThrow(
      conflict,
    )
    const entry = await entryHead(GUEST, 'answered-visit')
    const version = entry && (await versionOf(GUEST, entry, 1))
    expect(version?.deeds.find(({ outcome }) => outcome === 'answer')?.words).toBeNull()
  })
})

describe('authorsBehind(entry, number)', () => {
  it('are all whose words a version grew from, in the order they first wrote, and nobody who was declined', async () => {
    const revise = async (by: Member, basedOn: number | null, outcome: 'publish' | 'return' | 'decline') => {
      const sent = await submit(by, makeSubmission({ slug: 'many-hands', basedOn }), REFERENCES)
      await decide(SECOND, verdictOn(sent, outcome))
      return sent
    }
    const { entryId } = await revise(OTHER, null, 'publish')
    await revise(READER_WHO_WRITES, 1, 'decline')
    await revise(CONTRIBUTOR, 1, 'return')
    await revise(OTHER, 3, 'publish')
    await revise(REVIEWER, 4, 'publish')
    const behind = (number: number) => authorsBehind(entryId, number)
    expect(await behind(1)).toEqual([OTHER.key])
    expect(await behind(4)).toEqual([OTHER.key, CONTRIBUTOR.key])
    expect(await behind(5)).toEqual([OTHER.key, CONTRIBUTOR.key, REVIEWER.key])
    expect(await behind(2)).toEqual([OTHER.key, READER_WHO_WRITES.key])
  })
})

describe('the right to answer beside a visit', () => {
  const visited = async (slug: string, visitor: Member = OTHER) => {
    const body = makeVisit({ case: slug })
    const visit = await submit(
      visitor,
      makeSubmission({ kind: 'visit', slug: `${slug}-seen`, body }),
      REFERENCES,
    )
    await decide(REVIEWER, verdictOn(visit))
    return `${slug}-seen`
  }
  const revise = (by: Member, slug: string, body: unknown, over: object = {}) =>
    submit(by, makeSubmission({ slug, body, basedOn: 1, ...over }), REFERENCES)

  it('is not a visitor’s who revised the case too: the first author’s it stays', async () => {
    await publish('case', 'both-hands', makeCase())
    const edit = await revise(OTHER, 'both-hands', makeCase({ summary: 'Seen again.' }), { kind: 'case' })
    await decide(REVIEWER, verdictOn(edit))
    const visit = await visited('both-hands')
    await expect(answerVisit(OTHER, said(visit))).rejects.toThrow(forbidden)
    await answerVisit(CONTRIBUTOR, said(visit))
  })

  it('is not an author’s who corrected the visit, nor theirs whose edit of the case was declined', async () => {
    await publish('case', 'edited-visit', makeCase())
    const declined = await revise(OTHER, 'edited-visit', makeCase({ summary: 'Mine.' }), { kind: 'case' })
    await decide(REVIEWER, verdictOn(declined, 'decline'))
    const visit = await visited('edited-visit', READER_WHO_WRITES)
    await expect(answerVisit(OTHER, said(visit))).rejects.toThrow(forbidden)
    expect((await noticesFor(OTHER.key)).notices.map(({ slug }) => slug)).not.toContain(visit)
    await revise(CONTRIBUTOR, visit, makeVisit({ case: 'edited-visit', seen: 'A crack.' }), { kind: 'visit' })
    await expect(answerVisit(CONTRIBUTOR, said(visit))).rejects.toThrow(forbidden)
  })

  it('waits until an address is confirmed, since the words show at once', async () => {
    await publish('case', 'unconfirmed-hand', makeCase())
    const visit = await visited('unconfirmed-hand')
    await expect(answerVisit({ ...CONTRIBUTOR, unconfirmed: true }, said(visit))).rejects.toThrow(/Confirm/)
  })
})

describe('entryHead(actor, slug)', () => {
  it('shows what was never published to those alone who work on it', async () => {
    await send('unseen', makeRecipe({ title: 'Not yet' }))
    for (const actor of [GUEST, READER, OTHER]) expect(await entryHead(actor, 'unseen')).toBeNull()
    for (const actor of [CONTRIBUTOR, REVIEWER, STEWARD])
      expect((await entryHead(actor, 'unseen'))?.title).toBe('Not yet')
  })

  it('tells all of a version that waits, but not its words', async () => {
    await publish('recipe', 'half-seen', makeRecipe())
    await send('half-seen', makeRecipe({ title: 'Unreviewed words' }), {
      basedOn: 1,
      note: 'Unreviewed note.',
    })
    const entry = await entryHead(GUEST, 'half-seen')
    if (entry === null) throw new Error('it is published')
    const { versions } = await versionsOf(GUEST, entry)
    expect(versions.map(({ number, state, note, open }) => ({ number, state, note, open }))).toEqual([
      { number: 2, state: 'submitted', note: null, open: false },
      { number: 1, state: 'published', note: 'First entry.', open: true },
    ])
    expect((await versionOf(GUEST, entry, 2))?.body).toBeNull()
    expect(entry.title).toBe('Lime and pit sand')
  })
})

describe('adaptationTree(entry)', () => {
  it('is the same tree from every recipe in it, and ends where recipes go round in a circle', async () => {
    const adapt = (slug: string, from: string, basedOn: number | null = null) =>
      publish('recipe', slug, makeRecipe({ title: slug, adaptedFrom: from }), basedOn)
    const root = await publish('recipe', 'tree-root', makeRecipe({ title: 'tree-root' }))
    const branch = await adapt('tree-branch', 'tree-root@1')
    await adapt('tree-leaf', 'tree-branch@1')
    await adapt('tree-other', 'tree-root@1')
    const shape = async (id: string) =>
      (await adaptationTree(id)).map(({ slug, depth, parentRevision }) => [slug, depth, parentRevision])
    const whole = [
      ['tree-root', 0, null],
      ['tree-branch', 1, 1],
      ['tree-leaf', 2, 1],
      ['tree-other', 1, 1],
    ]
    expect(await shape(root.entryId)).toEqual(whole)
    expect(await shape(branch.entryId)).toEqual(whole)
    await adapt('tree-root', 'tree-leaf@1', 1)
    expect((await adaptationTree(root.entryId)).length).toBeGreaterThanOrEqual(4)
  })
})

describe('likelyDuplicates(case)', () => {
  it('points at a wall with the same stone, place, title and dates, and at no other', async () => {
    const place = { country: 'PT', region: 'Vale Inventado', latitude: 41.2, longitude: -8.1 }
    const body = makeCase({ title: 'Granite barn above the ford', place })
    await publish('case', 'barn-first', body)
    await publish(
      'case',
      'mill',
      makeCase({ title: 'Mill race', place: { ...place, latitude: 39, longitude: -7 } }),
    )
    const again = await send('barn-again', makeCase({ title: 'Granite barn by the ford', place }), {
      kind: 'case',
    })
    const found = await likelyDuplicates(again.entryId, body, 'somebody-else')
    expect(found).toEqual([
      { slug: 'barn-first', title: 'Granite barn above the ford', because: ['title', 'position', 'dates'] },
    ])
  })
})

describe('the record after all this', () => {
  it('verifies, and its projections are what a rebuild would make', async () => {
    expect((await verify('no-such-folder')).findings).toEqual([])
    const wrong: unknown[] = []
    for await (const disagreement of checkProjections(db())) wrong.push(disagreement)
    expect(wrong).toEqual([])
  })
})
