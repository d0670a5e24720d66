import { beforeAll, describe, expect, it } from 'vitest'
import { db } from '#lib/db/client.ts'
import { caseFilterOf, dropping, findAll, findCases, LONGEST_TEXT, suggest } from '#lib/search/index.ts'
import { makeCase, publish } from '#test/support/make.ts'

/** Text that nobody means well with, or that no language has; each must be answered, and in bounded work. */
const TEXTS: readonly (readonly [name: string, text: string])[] = [
  ['ten kilobytes of quotes', '"'.repeat(10_240)],
  ['quotes about nothing', '"" "" """ “„”'],
  ['ten kilobytes of a word', 'lime '.repeat(2048)],
  ['one word of ten kilobytes', 'a'.repeat(10_240)],
  ['stop words', 'the of and to in a is der die das de la'],
  ['minus signs', '- -- --- -the - "'],
  ['pictures', '😀🧱👷‍♀️🇪🇪'],
  ['right to left', 'جير مطفأ حجر جيري'],
  ['both directions', 'lime \u202e emil \u202d جير'],
  ['halves of letters', '\ud800lime\udc00'],
  ['nothing seen', '\u0000\u200b\ufeff\u0007'],
  ['stacked accents', `e${'\u0301'.repeat(3000)}`],
  ['SQL', `'; DROP TABLE "SearchDocument"; --`],
  ['more SQL', `lime' OR '1'='1`],
  ['a tsquery', `lime & !sand | (a <-> b):*ABCD`],
  ['patterns', `%_\\%(.*)+[a-z]{1000}`],
  ['our own marks', 'unit:granite use:pointing =lime/t lime_mortar'],
  ['many exclusions', '-lime '.repeat(500)],
  ['lone brackets', '((((((((((<<<<<<>>>>>>))))'],
]

beforeAll(async () => {
  await publish('case', 'kept', makeCase({ title: 'Lime kiln', summary: 'A wall of lime and granite.' }))
})

describe('finding by hostile text', () => {
  it.each(TEXTS)('answers %s', async (_, text) => {
    const [cases, all, offered] = [await findCases({ text }), await findAll({ text }), await suggest(text)]
    expect(cases.total).toBeLessThanOrEqual(1)
    expect(all.results.length).toBeLessThanOrEqual(20)
    expect(offered.length).toBeLessThanOrEqual(8)
    expect(cases.read.clauses.length).toBeLessThanOrEqual(12)
    expect(cases.faults.map(({ code }) => code)).toEqual(text.length > LONGEST_TEXT ? ['too-long'] : [])
    await dropping({ text })
    expect(await db().searchDocument.count()).toBe(1)
  })

  it('takes no mark from what is typed', async () => {
    expect((await findCases({ text: 'unit:granite' })).read.clauses).toEqual(['unit', 'granite'])
  })

  it('takes a filter of nonsense for no filter, and says so', async () => {
    const { filter, faults } = caseFilterOf({ unit: `'; --`, region: '\u0000', row: 'a#b#c', recipe: 'A B' })
    expect(filter).toEqual({})
    expect(faults.map(({ field }) => field)).toEqual(['unit', 'region', 'recipe', 'row'])
    expect((await findCases({ filter: { country: [`EE'); --`], unit: ['no-such-unit'] } })).total).toBe(0)
  })
})
