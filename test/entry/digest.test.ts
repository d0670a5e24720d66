import { describe, expect, it } from 'vitest'
import { canonicalJson, decisionDigest, digestOf, revisionDigest } from '#lib/entry/digest.ts'

/**
 * The digests below were worked with Python 3's hashlib over text written by its json module (sorted keys, no
 * spaces), not with this program.
 */
const BODY = { title: 'Lime and sand', parts: [1, 3], note: 'õ – ünd' }
const BODY_DIGEST = '996566399027cf75c1f0692053e1ad6d7e00304956b6d8d31fd8b08abe6a288c'
const FIRST = '15b47aae75085287cf09a934e9852699d773da254589d832fb674209cb329ef9'
const link = {
  entryId: '01890000-0000-7000-8000-000000000001',
  number: 1,
  bodyDigest: BODY_DIGEST,
  parentDigest: null,
  shape: 1,
  authorKey: 'a-mason',
  createdAt: new Date('2026-01-02T03:04:05.678Z'),
  note: 'First.',
}
const decision = {
  entryId: link.entryId,
  number: 1,
  revisionDigest: FIRST,
  parentDigest: null,
  outcome: 'publish',
  reviewerKey: 'a-reviewer',
  checklist: { sources: true, safety: true },
  words: 'Good.',
  at: new Date('2026-01-03T00:00:00Z'),
}

describe('canonicalJson(value)', () => {
  it('writes the sample of RFC 8785, section 3.2.2, as that section prints it', () => {
    const sample = JSON.parse(
      String.raw`{"numbers":[333333333.33333329,1E30,4.50,2e-3,0.000000000000000000000000001],"string":"\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/","literals":[null,true,false]}`,
    )
    expect(canonicalJson(sample)).toBe(
      String.raw`{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],"string":"€$\u000f\nA'B\"\\\\\"/"}`,
    )
  })

  it('refuses what JSON cannot hold', () => {
    expect(() => canonicalJson(undefined)).toThrow()
    expect(() => canonicalJson({ n: Number.NaN })).toThrow()
  })
})

describe('digestOf(value)', () => {
  it('is the SHA-256 of the canonical form', () => {
    expect(digestOf(BODY)).toBe(BODY_DIGEST)
  })

  it('does not depend on the order of keys', () => {
    expect(digestOf({ note: BODY.note, parts: [1.0, 3], title: BODY.title })).toBe(BODY_DIGEST)
  })

  it('depends on the order of a list', () => {
    expect(digestOf({ ...BODY, parts: [3, 1] })).not.toBe(BODY_DIGEST)
  })
})

describe('revisionDigest(link)', () => {
  it('gives the digest worked elsewhere for a first and for a second revision', () => {
    expect(revisionDigest(link)).toBe(FIRST)
    const createdAt = new Date('2026-02-03T04:05:06Z')
    expect(revisionDigest({ ...link, number: 2, parentDigest: FIRST, createdAt, note: 'Second.' })).toBe(
      '20f2c7d8a63d2870190ba62c16f2ae58bb8e2e639c1944fbbd5566efc99dfa73',
    )
  })

  it.each([
    ['entryId', '01890000-0000-7000-8000-000000000002'],
    ['number', 2],
    ['bodyDigest', FIRST],
    ['parentDigest', FIRST],
    ['shape', 2],
    ['authorKey', 'b-mason'],
    ['createdAt', new Date('2026-01-02T03:04:05.679Z')],
    ['note', 'First'],
  ])('changes with %s', (field, value) => {
    expect(revisionDigest({ ...link, [field]: value })).not.toBe(FIRST)
  })
})

describe('decisionDigest(link)', () => {
  const DECISION = '668de0a5cec7ac264238d28727a041150988bcf79c56c64546f3dea2198f1f7a'

  it('gives the digest worked elsewhere', () => {
    expect(decisionDigest(decision)).toBe(DECISION)
  })

  it.each([
    ['revisionDigest', BODY_DIGEST],
    ['parentDigest', FIRST],
    ['outcome', 'decline'],
    ['reviewerKey', 'b-reviewer'],
    ['checklist', { sources: true }],
    ['words', 'Bad.'],
    ['at', new Date('2026-01-03T00:00:00.001Z')],
  ])('changes with %s', (field, value) => {
    expect(decisionDigest({ ...decision, [field]: value })).not.toBe(DECISION)
  })
})
