import { v4 } from 'uuid'
import { beforeAll, describe, expect, it } from 'vitest'
import { db } from '#lib/db/client.ts'
import { checkProjections } from '#lib/db/projection/check.ts'
import {
  dropping,
  everyCase,
  everyPage,
  type Found,
  findAll,
  findCases,
  type LikeFound,
  likeCases,
  regionCounts,
  suggest,
} from '#lib/search/index.ts'
import { forgetRecord } from '#lib/search/record.ts'
import { rebuild } from '#lib/workflow/rebuild.ts'
import { renewProjections } from '#lib/workflow/renew-projections.ts'
import { restore, withdraw } from '#lib/workflow/withdraw.ts'
import { makeCase, makeRecipe, makeVisit, makeWork, publish, STEWARD } from '#test/support/make.ts'

const found = async (text: string) => (await findCases({ text })).results.map(({ slug }) => slug)
const disagreements = async () => {
  const all: unknown[] = []
  for await (const one of checkProjections(db())) all.push(one)
  return all
}

beforeAll(async () => {
  await publish('recipe', 'plain-putty', makeRecipe({ title: 'Plain putty mortar' }))
  for (const [slug, title, country, year] of [
    ['mill', 'Mill by the weir', 'EE', 2010],
    ['byre', 'Byre on the slope', 'SI', 2012],
    ['barn', 'Barn with a loft', 'SI', 2014],
  ] as const) {
    const place = { country, region: 'Upper valley', latitude: 46.1, longitude: 14.5 }
    const works = [makeWork({ recipe: 'plain-putty@1', started: `${year}`, finished: `${year}` })]
    await publish('case', slug, makeCase({ title, place, works }))
    await publish('visit', `${slug}-first`, makeVisit({ case: slug, on: `${year}-12-31` }))
    const later = { baseline: false, joint: 'worn', seen: 'Lichen on the buttress.' } as const
    await publish('visit', `${slug}-later`, makeVisit({ case: slug, on: '2020-12-31', ...later }))
  }
})

describe('finding', () => {
  it('finds what is published at once, by its words, its visits and its recipe', async () => {
    expect(await found('weir')).toEqual(['mill'])
    expect(await found('lichen buttress')).toEqual(['mill', 'byre', 'barn'])
    expect((await findCases({ filter: { recipe: ['plain-putty'] } })).total).toBe(3)
    expect((await findCases({ filter: { family: ['air-lime'], binder: ['lime-fat'] } })).total).toBe(3)
    await publish('case', 'kiln', makeCase({ title: 'Kiln at the quarry' }))
    expect(await found('quarry')).toEqual(['kiln'])
    const changed = makeCase({ title: 'Kiln at the pit' })
    await publish('case', 'kiln', changed, 1)
    expect(await found('quarry')).toEqual([])
    expect(await found('pit')).toEqual(['kiln'])
  })

  it('finds words of other languages in the record by English ones, and the other way', async () => {
    await publish('case', 'kalk', makeCase({ title: 'Hofmauer', summary: 'Mit Kalkmörtel verfugt.' }))
    const earlier = [{ what: 'Rejointoyé au mortier de chaux, sans date.' }]
    await publish('case', 'chaux', makeCase({ title: 'Mur de la cour', summary: 'Côté nord.', earlier }))
    await publish('case', 'english', makeCase({ title: 'Yard wall', summary: 'Old lime mortar.' }))
    for (const typed of ['lime mortar', 'kalkmörtel', 'mortier de chaux', 'mortero de cal'])
      expect(await found(typed)).toEqual(expect.arrayContaining(['kalk', 'chaux', 'english']))
    const { results } = await findCases({ text: 'lime mortar' })
    const why = (slug: string) => results.find((one) => one.slug === slug)?.why[0]
    expect(why('kalk')).toMatchObject({ how: 'other-name', matched: 'Kalkmörtel' })
    expect(why('chaux')).toMatchObject({ how: 'other-name', matched: 'mortier de chaux', field: 'text' })
    expect(why('english')).toMatchObject({ how: 'as-typed' })
    // Words that only chance to stand in the same page are not the name.
    await publish('case', 'apart', makeCase({ title: 'Mortier', summary: 'Rien.' }))
    expect(await found('lime mortar')).not.toContain('apart')
  })

  it('never finds what is withdrawn, nor its words, and finds it again once it is restored', async () => {
    await publish(
      'case',
      'shed',
      makeCase({ title: 'Shed of the gooseherd', place: { country: 'PT', region: 'Lowmarsh' } }),
    )
    expect(await found('gooseherd')).toEqual(['shed'])
    await withdraw(STEWARD, { key: v4(), slug: 'shed', words: 'The owner asked.' })
    expect(await found('gooseherd')).toEqual([])
    expect((await findAll({ text: 'gooseherd' })).total).toBe(0)
    expect((await findAll({ text: 'gosherd' })).read.corrected).toEqual([])
    for (const typed of ['goose', 'gosehe', 'lowm', 'lowmash'])
      expect(JSON.stringify(await suggest(typed)), typed).not.toMatch(/gooseherd|lowmarsh/i)
    expect((await findCases({ filter: { country: ['PT'] } })).total).toBe(0)
    expect((await regionCounts({})).map(({ country }) => country)).not.toContain('PT')
    expect((await likeCases({ place: { country: 'PT' } })).total).toBe(0)
    await restore(STEWARD, { key: v4(), slug: 'shed', words: 'A mistake.' })
    expect(await found('gooseherd')).toEqual(['shed'])
    await withdraw(STEWARD, { key: v4(), slug: 'shed', words: 'Not a mistake.' })
  })

  it('says the same to a server that has just started', async () => {
    const before = await findCases({ text: 'lichen' })
    forgetRecord()
    expect(await findCases({ text: 'lichen' })).toEqual(before)
  })

  it('says the same after a rebuild, from the same rows', async () => {
    const tables = ['SearchDocument', 'SearchPosting', 'SearchWord']
    const rows = () =>
      Promise.all(tables.map((table) => db().$queryRawUnsafe(`SELECT * FROM "${table}" t ORDER BY t::text`)))
    const [before, answer] = [await rows(), await findCases({ text: 'lichen' })]
    await rebuild()
    expect(await rows()).toEqual(before)
    expect(await findCases({ text: 'lichen' })).toEqual(answer)
    expect(await disagreements()).toEqual([])
  })

  it.each([
    [`UPDATE "SearchDocument" SET body = 'forged' WHERE slug = 'mill'`, 'SearchDocument'],
    [`DELETE FROM "SearchPosting" WHERE lexeme = 'weir'`, 'SearchPosting'],
    [`UPDATE "SearchWord" SET documents = 9 WHERE word = 'weir'`, 'SearchWord'],
  ])('is checked: %s is told', async (statement, table) => {
    await db().$executeRawUnsafe(statement)
    expect(await disagreements()).toContainEqual(expect.objectContaining({ table }))
    await rebuild()
    expect(await disagreements()).toEqual([])
  })
})

describe('renewProjections()', () => {
  it('makes everything again where another version of the program wrote it, and only there', async () => {
    expect(await renewProjections()).toBe(false)
    await db().projectionState.update({ where: { id: 1 }, data: { version: 0 } })
    await db().searchPosting.deleteMany()
    expect(await renewProjections()).toBe(true)
    expect(await found('weir')).toEqual(['mill'])
    expect(await disagreements()).toEqual([])
    expect(await renewProjections()).toBe(false)
  })
})

describe('pages of findCases()', () => {
  const all = async (sort: 'newest' | 'watched' | 'best', between?: () => Promise<void>) => {
    const seen: string[] = []
    for (let after: string | undefined; ; ) {
      const page: Found = await findCases({ text: 'buttress', sort, after, limit: 1 })
      seen.push(...page.results.map(({ slug }) => slug))
      if (page.next === null) return seen
      after = page.next
      if (seen.length === 1) await between?.()
    }
  }

  it('hold the longest watched and the newest first', async () => {
    expect(await all('watched')).toEqual(['mill', 'byre', 'barn'])
    expect(await all('newest')).toEqual(['barn', 'byre', 'mill'])
  })

  it.each(['newest', 'watched', 'best'] as const)(
    'neither repeat nor skip where one is published in between, %s first',
    async (sort) => {
      const before = await all(sort)
      const late = `late-${sort}`
      const seen = await all(sort, async () => {
        await publish('case', late, makeCase({ title: `A late buttress, ${sort}` }))
      })
      // It may still come where its place lies ahead; what was there comes once, in its order.
      expect(seen.filter((slug) => slug !== late)).toEqual(before)
      expect((await all(sort)).filter((slug) => slug !== late)).toEqual(before)
      expect(await all('newest')).toContain(late)
    },
  )

  it('neither repeat nor skip where one is published in between, the likest first', async () => {
    const wall = { unit: ['limestone'], place: { country: 'SI' } }
    const like = async (between?: () => Promise<void>) => {
      const seen: string[] = []
      for (let after: string | undefined; ; ) {
        const page: LikeFound = await likeCases(wall, { after, limit: 1 })
        seen.push(...page.results.map(({ slug }) => slug))
        if (page.next === null) return seen
        after = page.next
        if (seen.length === 1) await between?.()
      }
    }
    const before = await like()
    const seen = await like(async () => {
      await publish(
        'case',
        'late-like',
        makeCase({ title: 'A late wall', place: { country: 'SI', region: 'Upper valley' } }),
      )
    })
    expect(before.length).toBeGreaterThan(3)
    expect(seen.filter((slug) => slug !== 'late-like')).toEqual(before)
    expect(await like()).toContain('late-like')
  })

  it('refuse a place that was never given', async () => {
    for (const after of ['', 'x', '1_2', '1_2_3_4', "1_2_3' OR 1=1"])
      await expect(findCases({ after })).rejects.toMatchObject({
        code: 'invalid',
        faults: [{ field: 'after' }],
      })
  })

  it('are all in the list that is taken away', async () => {
    const slugs: string[] = []
    for await (const some of everyCase({ text: 'buttress' })) slugs.push(...some.map(({ slug }) => slug))
    expect([...slugs].sort()).toEqual((await all('best')).sort())
  })

  it('of every kind are in the list that is taken away in their order, one search for all', async () => {
    const listed: string[] = []
    for await (const some of everyPage({ text: 'lime' }))
      listed.push(...some.map(({ kind, id }) => `${kind} ${id}`))
    const seen: string[] = []
    for (let after: string | undefined; ; ) {
      const page = await findAll({ text: 'lime', after, limit: 100 })
      seen.push(...page.results.map(({ kind, id }) => `${kind} ${id}`))
      if (page.next === null) break
      after = page.next
    }
    expect(listed).toEqual(seen)
    expect(listed.length).toBeGreaterThan(100)
    for await (const some of everyPage({ text: 'lichen', kind: 'case' }))
      expect(some.map(({ id }) => id).sort()).toEqual((await found('lichen')).sort())
    for await (const some of everyPage({ text: 'the of' })) expect(some).toEqual([])
  })
})

describe('dropping(asked)', () => {
  it('tells what each choice keeps out of an empty list', async () => {
    const asked = { text: 'weir', filter: { country: ['EE'], joint: ['lost'] } }
    expect((await findCases(asked)).total).toBe(0)
    expect(await dropping(asked)).toEqual([{ facet: 'joint', value: 'lost', brings: 1 }])
    expect(await dropping({ text: 'weir loft' })).toEqual([
      { facet: 'text', brings: (await findCases({})).total },
      { facet: 'text', value: 'weir', brings: 1 },
      { facet: 'text', value: 'loft', brings: 1 },
    ])
  })
})

describe('suggest(typed)', () => {
  it('offers names in any language, places, titles and words, each once', async () => {
    expect((await suggest('kalkm')).map(({ kind, id }) => `${kind} ${id}`)).toContain('term lime-mortar')
    expect(await suggest('upper v')).toContainEqual({
      text: 'Upper valley',
      kind: 'place',
      id: 'EE:Upper valley',
    })
    expect(await suggest('PLAIN p')).toContainEqual({
      ...{ text: 'Plain putty mortar', kind: 'recipe', id: 'plain-putty' },
    })
    expect(await suggest('old lich')).toContainEqual({ text: 'old lichen', kind: 'word', id: 'lichen' })
    expect(await suggest('x')).toEqual([])
    expect((await suggest('li', 5)).length).toBeLessThanOrEqual(5)
  })

  it('offers what was meant where nothing is called so: slips in whole words and in beginnings', async () => {
    const offered = async (typed: string) => (await suggest(typed)).map(({ text }) => text)
    for (const [typed, meant] of [
      ['limstone', 'Limestone'],
      ['limst', 'Limestone'],
      ['portlnd', 'Portland cement'],
      ['Portlnd cem', 'Portland cement'],
      ['quick lime', 'Quicklime'],
      ['kalkmortl', 'Kalkmörtel'],
      ['efflorecen', 'Efflorescence'],
      ['uper val', 'Upper valley'],
      ['Plian puty', 'Plain putty mortar'],
      ['hydralic lime', 'Hydraulic lime'],
    ] as const)
      expect(await offered(typed), typed).toContain(meant)
    // What somebody wrote so is no slip, and what is like nothing stays without an offer.
    expect(await suggest('old lich')).toEqual([{ text: 'old lichen', kind: 'word', id: 'lichen' }])
    expect(await suggest('qzxwvkjh')).toEqual([])
    expect(await suggest('xy')).toEqual([])
    expect((await suggest('hydralic lime'))[0]?.text).toBe('Hydraulic lime')
    expect((await suggest('limestone'))[0]?.text).toBe('Limestone')
  })
})
