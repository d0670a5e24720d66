import { describe, expect, it } from 'vitest'
import type { Member } from '#lib/access/actor.ts'
import { visitsByOthers } from '#lib/db/authors.ts'
import { db } from '#lib/db/client.ts'
import { checkProjections } from '#lib/db/projection/check.ts'
import { decide } from '#lib/workflow/decide.ts'
import { submit } from '#lib/workflow/submit.ts'
import {
  CONTRIBUTOR,
  makeCase,
  makeSubmission,
  makeVisit,
  OTHER,
  publish,
  REFERENCES,
  REVIEWER,
  verdictOn,
} from '../support/make.ts'

const THIRD: Member = { kind: 'member', key: 'mason-3', roles: ['contributor'] }
const isSeen = async (slug: string) =>
  (await db().caseIndex.findUniqueOrThrow({ where: { slug } })).secondObserver

async function write(
  by: Member,
  kind: 'case' | 'visit',
  slug: string,
  body: object,
  basedOn: number | null = null,
) {
  const sent = await submit(by, makeSubmission({ kind, slug, body, basedOn }), REFERENCES)
  return { sent, publish: () => decide(REVIEWER, verdictOn(sent)) }
}

describe('a case counts as visited by another', () => {
  it('once a visit of somebody who wrote nothing of it is published, not while one waits', async () => {
    await publish('case', 'two-eyes', makeCase())
    const own = makeVisit({
      case: 'two-eyes',
      // Named by the author of the case: nobody else has put it on record.
      others: [{ who: 'owner-or-keeper', joint: 'sound', unit: 'sound', damp: 'dry' }],
    })
    await (await write(CONTRIBUTOR, 'visit', 'two-eyes-own', own)).publish()
    expect(await isSeen('two-eyes')).toBe(false)
    const theirs = makeVisit({ case: 'two-eyes', on: '2015-06-20', baseline: false })
    const visit = await write(OTHER, 'visit', 'two-eyes-other', theirs)
    expect(await isSeen('two-eyes')).toBe(false)
    await visit.publish()
    expect(await isSeen('two-eyes')).toBe(true)
    const { id } = await db().entry.findUniqueOrThrow({ where: { slug: 'two-eyes' } })
    expect(await visitsByOthers([id])).toEqual(new Set([visit.sent.entryId]))
  })

  it('and not by one who wrote in the case, or who only corrected its author’s visit', async () => {
    await publish('case', 'one-eye', makeCase())
    await (await write(OTHER, 'case', 'one-eye', makeCase({ summary: 'Put right.' }), 1)).publish()
    await (await write(OTHER, 'visit', 'one-eye-second', makeVisit({ case: 'one-eye' }))).publish()
    const later = makeVisit({ case: 'one-eye', on: '2015-06-20', baseline: false })
    await (await write(CONTRIBUTOR, 'visit', 'one-eye-first', later)).publish()
    const corrected = { ...later, seen: 'A crack.' }
    await (await write(THIRD, 'visit', 'one-eye-first', corrected, 1)).publish()
    expect(await isSeen('one-eye')).toBe(false)
    // A correction by the case's author takes nothing from who saw the wall.
    const theirs = makeVisit({ case: 'one-eye', on: '2017-06-20', baseline: false })
    await (await write(THIRD, 'visit', 'one-eye-third', theirs)).publish()
    await (await write(CONTRIBUTOR, 'visit', 'one-eye-third', { ...theirs, seen: 'Moss.' }, 1)).publish()
    expect(await isSeen('one-eye')).toBe(true)
  })

  it('as a rebuild would have it', async () => {
    const wrong: unknown[] = []
    for await (const disagreement of checkProjections(db())) wrong.push(disagreement)
    expect(wrong).toEqual([])
  })
})
