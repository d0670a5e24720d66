import { beforeAll, describe, expect, it } from 'vitest'
import { materialBy } from '#lib/content/known-materials.ts'
import { citing } from '#lib/db/citations.ts'
import { db } from '#lib/db/client.ts'
import { listLibrary } from '#lib/db/library.ts'
import { readMaterials } from '#lib/db/materials.ts'
import { checkProjections } from '#lib/db/projection/check.ts'
import { recipeBySlug } from '#lib/db/recipes.ts'
import type { MaterialBody } from '#lib/entry/material.ts'
import type { SourceBody } from '#lib/entry/source.ts'
import { Refusal } from '#lib/errors.ts'
import { rebuild } from '#lib/workflow/rebuild.ts'
import { submit } from '#lib/workflow/submit.ts'
import { withdraw } from '#lib/workflow/withdraw.ts'
import { workedProportions } from '../../app/_ui/worked.ts'
import { CONTRIBUTOR, makeRecipe, makeSubmission, publish, REFERENCES, STEWARD } from '../support/make.ts'

const source = (title: string): SourceBody => ({ type: 'report', title, invented: true })

const sand = (over: Partial<MaterialBody> = {}): MaterialBody => ({
  title: 'Sand of the ford',
  summary: 'Sharp, with a little silt.',
  role: 'aggregate',
  like: 'sand-pit',
  region: { country: 'EE' },
  properties: [
    {
      property: 'voids',
      low: 0.34,
      typical: 0.36,
      high: 0.38,
      basis: 'read',
      source: { source: 'trial-report', locator: 'p. 4' },
    },
  ],
  standing: 'in-use',
  invented: true,
  ...over,
})

const refused = (promise: Promise<unknown>) =>
  promise.then(
    () => 'accepted',
    (error: unknown) => (error instanceof Refusal ? error.faults : error),
  )

const write = (kind: 'source' | 'material', slug: string, body: unknown) =>
  submit(CONTRIBUTOR, makeSubmission({ kind, slug, body }), REFERENCES)

beforeAll(async () => {
  await publish('source', 'trial-report', source('Trials at the ford'))
  await publish('material', 'ford-sand', sand())
  await publish('recipe', 'ford-mortar', makeRecipe({ sources: [{ source: 'trial-report' }] }))
})

describe('what people add beside content', () => {
  it('is listed by title, a page at a time, and by what it is a kind of', async () => {
    await publish('source', 'another', source('Älter als alle'))
    const first = await listLibrary('source', { limit: 1 })
    expect(first).toMatchObject({ entries: [{ slug: 'another' }], next: 'another' })
    const second = await listLibrary('source', { limit: 1, after: 'another' })
    expect(second).toMatchObject({ entries: [{ slug: 'trial-report' }], next: null })
    expect((await listLibrary('material', { like: 'sand-pit' })).entries).toMatchObject([
      { slug: 'ford-sand', role: 'aggregate' },
    ])
    expect((await listLibrary('material', { like: 'lime-fat' })).entries).toEqual([])
  })

  it('is cited as content is: by recipes, and by the figures of materials', async () => {
    expect(await citing({ source: 'trial-report' })).toMatchObject([
      { kind: 'recipe', slug: 'ford-mortar' },
      { kind: 'material', slug: 'ford-sand', locator: 'p. 4' },
    ])
  })

  it('is made again the same by rebuild, and found wrong where it was changed by hand', async () => {
    const before = await db().libraryIndex.findMany({ orderBy: { slug: 'asc' } })
    await rebuild()
    expect(await db().libraryIndex.findMany({ orderBy: { slug: 'asc' } })).toEqual(before)
    await db().libraryIndex.update({ where: { slug: 'ford-sand' }, data: { title: 'Gravel' } })
    const found: string[] = []
    for await (const { table } of checkProjections(db())) found.push(table)
    expect(found).toEqual(['LibraryIndex'])
    await rebuild()
  })

  it('goes from the lists when it is withdrawn', async () => {
    await publish('source', 'mistaken', source('A mistake'))
    await withdraw(STEWARD, { key: crypto.randomUUID(), slug: 'mistaken', words: 'It does not exist.' })
    expect((await listLibrary('source')).entries.map(({ slug }) => slug)).not.toContain('mistaken')
  })
})

describe('a material that people added, as an ingredient', () => {
  const dune = (over: Partial<MaterialBody> = {}) => sand({ title: 'Sand of the dune', ...over })
  const density = (typical: number): MaterialBody['properties'][number] => ({
    ...{ property: 'bulkDensity', low: typical - 50, typical, high: typical + 50, basis: 'measured' },
  })
  const mix = (material: string) => {
    const [lime, aggregate] = makeRecipe().ingredients
    return makeRecipe({
      ingredients: [lime, aggregate && { ...aggregate, material }].flatMap((one) => one ?? []),
    })
  }

  it('may be named once it is published, and by nobody before', async () => {
    await publish('material', 'dune-sand', dune())
    await publish('recipe', 'dune-mortar', mix('dune-sand'))
    const unknown = submit(CONTRIBUTOR, makeSubmission({ slug: 'odd', body: mix('moon-dust') }), REFERENCES)
    expect(await refused(unknown)).toMatchObject([{ field: 'ingredients.1.material', code: 'unknown' }])
  })

  it('is worked with by its own figures: one that it lacks is named, and a further version counts at once', async () => {
    const worked = async () => {
      const recipe = await recipeBySlug('dune-mortar')
      return workedProportions(recipe?.body.ingredients ?? [])
    }
    expect(await worked()).toMatchObject({
      ok: false,
      faults: [{ field: 'materials.dune-sand.bulkDensity' }],
    })
    await publish('material', 'dune-sand', dune({ properties: [density(1500)] }), 1)
    const [first, again] = [await worked(), await worked()]
    expect(first).toMatchObject({ ok: true })
    expect(again).toBe(first)
    await publish('material', 'dune-sand', dune({ properties: [density(1000)] }), 2)
    const lighter = await worked()
    expect(lighter).toMatchObject({ ok: true })
    expect(lighter).not.toEqual(first)
  })

  it('is known no more once it was taken down', async () => {
    await publish('material', 'gone-sand', dune())
    await readMaterials(['gone-sand'])
    expect(materialBy('gone-sand')?.label).toBe('Sand of the dune')
    await withdraw(STEWARD, { key: crypto.randomUUID(), slug: 'gone-sand', words: 'A mistake.' })
    await readMaterials(['gone-sand'])
    expect(materialBy('gone-sand')).toBeUndefined()
  })
})

describe('submit(source or material) refuses', () => {
  it.each([
    [
      'a source that no one has published',
      sand({ properties: [], laboratory: [labOf('no-such')] }),
      'laboratory.0.source.source',
      'unknown',
    ],
    ['a kind of a material that content lacks', sand({ like: 'moon-dust' }), 'like', 'unknown'],
    [
      'a figure given twice',
      sand({ properties: [...sand().properties, ...sand().properties] }),
      'properties.1.property',
      'repeated',
    ],
  ])('%s', async (_, body, field, code) => {
    expect(await refused(write('material', 'odd-sand', body))).toMatchObject([{ field, code }])
  })

  it('an address that content uses already', async () => {
    expect(await refused(write('source', 'a-book', source('The same')))).toMatchObject([
      { field: 'slug', code: 'taken' },
    ])
  })
})

function labOf(name: string) {
  return {
    property: 'openPorosity',
    value: { low: 20, high: 24 },
    method: 'by water',
    source: { source: name },
  } as const
}
