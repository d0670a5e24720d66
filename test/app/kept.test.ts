import { createElement } from 'react'
import { renderToStaticMarkup } from 'react-dom/server'
import { describe, expect, it } from 'vitest'
import { speaking } from '#app/asked.ts'
import { sheetOf } from '#lib/api/job.ts'
import { content } from '#lib/content/index.ts'
import type { KeptSheet } from '#lib/db/kept-sheets.ts'
import { type KeptBlock, keptFigures, makeKeptFigures, readKeptFigures } from '#lib/entry/kept-sheet.ts'
import { recipeBody } from '#lib/entry/recipe.ts'
import { readDemo } from '#lib/workflow/demo-files.ts'
import type { Typed } from '../../app/_http/form.ts'
import { differencesOf } from '../../app/_kept/differences.ts'
import { freezeBlocks } from '../../app/_kept/freeze.ts'
import { Frozen } from '../../app/_kept/frozen.tsx'
import { jobBlocks } from '../../app/_kept/job/blocks.ts'
import { KeptBlocks } from '../../app/_kept/kept-blocks.tsx'
import { printedLines } from '../../app/_kept/printed.ts'
import { partsOf, workSheet } from '../../app/_kept/worked-sheet.ts'
import { SYSTEMS } from '../../app/_ui/systems.ts'
import type { AnyCalculation } from '../../app/_ui/workshop/calculation.ts'
import { benchData } from '../../app/_ui/workshop/data.ts'
import { figureText, namedFigures } from '../../app/_ui/workshop/figures.ts'
import { workOut } from '../../app/_ui/workshop/run.ts'
import type { Block } from '../../app/_ui/workshop/shown.ts'
import { addressOf, versionsOf } from '../../app/_ui/workshop/versions.ts'
import { readInputs } from '../../app/recipes/[slug]/job/read-inputs.ts'
import { workedFrom } from '../../app/recipes/[slug]/job/worked-from.tsx'
import { CALCULATIONS } from '../../app/work-out/calculations.ts'

const EDITIONS = { edition: 'e1', sums: 1 }

/** The address of a calculation's examples as somebody would send them. */
function addressWith(calculation: AnyCalculation, typed: Typed): string {
  const { form, shown } = workOut(calculation, typed, benchData(calculation))
  return addressOf(`/work-out/${calculation.name}`, form.typed, versionsOf(EDITIONS, shown?.blocks ?? []))
}

async function worked(address: string) {
  const working = await workSheet(address)
  if (!working?.ok) throw new Error(`nothing came of ${address}`)
  return working.sheet
}

const every = Object.values(CALCULATIONS).flatMap(({ calculation }) =>
  SYSTEMS.map((units) => [calculation.name, units, calculation as AnyCalculation] as const),
)

describe.each(every)('a kept sheet of /work-out/%s in %s units', (_, units, calculation) => {
  it('holds every figure as the page prints it, and comes back from storage as it was', async () => {
    const { figures } = await worked(addressWith(calculation, { units }))
    const stored = readKeptFigures(JSON.parse(JSON.stringify(figures)))
    expect(stored).toEqual(figures)
    const { shown, form } = workOut(calculation, { units }, benchData(calculation))
    const printed = namedFigures(shown?.blocks ?? []).map((one) => [one.name, figureText(one, form.system)])
    const kept = namedFigures(stored.blocks as Block[]).map((one) => [one.name, figureText(one, 'metric')])
    expect(kept.length).toBeGreaterThan(0)
    expect(kept).toEqual(printed)
    expect(stored.blocks.flatMap((one) => (one.kind === 'working' ? one.steps : []))).toHaveLength(
      shown?.steps.length ?? -1,
    )
    for (const [, text] of printed)
      expect(stored.printed.map(({ value }) => value)).toContain(text ?? 'not known')
    expect(differencesOf(stored.blocks, figures.blocks)).toEqual([])
  })
})

/** What ids a drawing gives its hatchings turns on the page that it stands in. */
const svgsOf = (html: string) =>
  (html.match(/<svg.*?<\/svg>/gs) ?? []).map((svg) => svg.replaceAll(/(id="|url\(#)[^")]*/g, '$1'))

it.each(['slaking', 'convert-ratio', 'sieve'])(
  'a kept sheet of /work-out/%s draws what its page drew',
  async (name) => {
    const [, , calculation] = every.find(([one]) => one === name) ?? []
    if (calculation === undefined) throw new Error('no such page')
    for (const units of SYSTEMS) {
      const { shown } = workOut(calculation, { units }, benchData(calculation))
      const drawn = (shown?.blocks ?? []).flatMap((block) => (block.kind === 'drawing' ? [block] : []))
      const { figures } = await worked(addressWith(calculation, { units }))
      const stored = readKeptFigures(JSON.parse(JSON.stringify(figures)))
      const page = renderToStaticMarkup(createElement(KeptBlocks, { blocks: stored.blocks, open: false }))
      const live = drawn.flatMap(({ draw }) => svgsOf(renderToStaticMarkup(draw)))
      expect(live.length).toBeGreaterThan(0)
      expect(svgsOf(page).filter((svg) => live.includes(svg))).toEqual(live)
      for (const { says } of drawn) expect(stored.blocks).toContainEqual(expect.objectContaining({ says }))
    }
  },
)

const SAND = '/work-out/sand?what=voids-water&sand-ml=1000&water-ml=340&units=metric'

describe('workSheet(address)', () => {
  it('gives the sheet with its versions and the name that was typed', async () => {
    const sheet = await worked(`${SAND}&label=Heap+by+the+gate`)
    expect(sheet).toMatchObject({
      calculation: 'sand',
      title: 'Heap by the gate',
      system: 'metric',
      recipe: null,
    })
    expect(partsOf(sheet.address)?.typed).toMatchObject({ is: sheet.versions.digest, 'water-ml': '340' })
  })

  it('says what is wrong with inputs that give no sheet', async () => {
    expect(await workSheet(SAND.replace('340', 'much'))).toMatchObject({
      ok: false,
      sentences: [expect.stringContaining('“much” is not a number')],
    })
  })

  it('takes no examples that the site typed in for a sheet', async () => {
    expect(await workSheet('/work-out/sand?units=us')).toMatchObject({ ok: false })
  })

  it.each([
    'https://elsewhere.example/work-out/sand?what=voids-water',
    '//elsewhere.example/work-out/sand',
    '/\\elsewhere.example/work-out/sand',
    '/work-out/no-such?what=voids-water',
    '/work-out/constructor?what=1',
    '/cases/barn-wall',
    'work-out/sand',
    '',
  ])('is nothing for %j', async (address) => {
    expect(await workSheet(address)).toBeNull()
  })
})

describe('jobBlocks(job)', () => {
  const recipes = readDemo().filter(({ kind }) => kind === 'recipe')

  it.each(recipes.map(({ slug, revisions }) => [slug, revisions.at(-1)?.body] as const))(
    'keeps all that a sheet of %s prints',
    (slug, body) => {
      const recipe = recipeBody.parse(body)
      const inputs = readInputs({ override: 'yes', reason: 'To see', show: 'fields' }, slug, recipe, 1)
      const outcome = inputs.request && sheetOf(recipe, inputs.request)
      if (!outcome?.ok) throw new Error(`${slug} gives no sheet`)
      const sheet = outcome.value
      const blocks = jobBlocks({ sheet, recipe, inputs })
      const kept = makeKeptFigures({ inputs: workedFrom(inputs), blocks, printed: printedLines(blocks) })
      const of = (name: string) => kept.blocks.find((block) => 'name' in block && block.name === name)
      expect(of('job')).toMatchObject({
        figures: expect.arrayContaining([
          expect.objectContaining({ name: 'made', value: sheet.mortarL, unit: 'L' }),
        ]),
      })
      expect(of('quantities')).toMatchObject({
        rows: sheet.ingredients.map(({ siteKg }) => ({
          cells: { mass: siteKg && { value: siteKg, unit: 'kg' } },
        })),
      })
      expect(of('sequence')).toMatchObject({ items: { length: sheet.sequence.length } })
      expect(of('cautions')).toBeDefined()
      expect(kept.blocks.filter((block) => block.kind === 'notice').length).toBe(
        recipe.standing === 'in-use' ? 0 : 1,
      )
      expect(differencesOf(kept.blocks, kept.blocks)).toEqual([])
    },
  )
})

it('a job sheet kept on a Spanish page keeps its cautions in Spanish', () => {
  const slug = 'hot-lime-for-rubble'
  const body = readDemo()
    .find((one) => one.slug === slug)
    ?.revisions.at(-1)?.body
  const recipe = recipeBody.parse(body)
  const inputs = readInputs({ use: 'volume', volume: '100', lime: 'ground-quicklime' }, slug, recipe, 1)
  const outcome = inputs.request && sheetOf(recipe, inputs.request)
  if (!outcome?.ok) throw new Error(JSON.stringify(inputs.faults))
  const blocks = speaking('es', () => jobBlocks({ sheet: outcome.value, recipe, inputs }))
  const { title, notice } = content().cautions.get('quicklime')?.es ?? {}
  expect(blocks.find((block) => 'name' in block && block.name === 'cautions')).toMatchObject({
    items: expect.arrayContaining([{ name: 'quicklime', text: `${title}. ${notice}` }]),
  })
})

describe.each([
  ['English', 'en', 'es', 'Esta hoja se guardó en inglés'],
  ['Spanish', 'es', 'en', 'This sheet was kept in Spanish'],
] as const)('a sheet kept in %s', (_, own, other, note) => {
  it('is drawn in that language on every page, and a page of the other says so', async () => {
    const { calculation } = CALCULATIONS.slaking
    const sheet = await speaking(own, () => worked(addressWith(calculation, { units: 'metric' })))
    const kept = { id: 'a', address: sheet.address, figures: sheet.figures } as KeptSheet
    const drawIn = (language: typeof own | typeof other) =>
      speaking(language, () =>
        renderToStaticMarkup(createElement(Frozen, { kept, language: own, open: true })),
      )
    const [home, away] = [drawIn(own), drawIn(other)]
    const frozen = /<div class="bench-result kept-sheet">.*<\/div>/s
    const inside = (html: string) =>
      svgsOf(html).join('') + (frozen.exec(html)?.[0] ?? '').replaceAll(/<svg.*?<\/svg>/gs, '')
    expect(inside(home).length).toBeGreaterThan(1000)
    expect(inside(away)).toBe(`${inside(home)}</div>`)
    expect(away).toContain(`<div lang="${own}">`)
    expect(away).toContain(note)
    expect(home).not.toMatch(/lang=/)
  })
})

it('a job sheet keeps what was assumed with its basis, and says which figures were one’s own', () => {
  const slug = 'hot-lime-for-rubble'
  const body = readDemo()
    .find((one) => one.slug === slug)
    ?.revisions.at(-1)?.body
  const recipe = recipeBody.parse(body)
  const lime = recipe.ingredients.find(({ role }) => role === 'lime')?.material ?? ''
  const typed = { use: 'volume', volume: '100', lime: 'ground-quicklime', [`own-${lime}-free-ca-o`]: '91' }
  const inputs = readInputs(typed, slug, recipe, 1)
  const outcome = inputs.request && sheetOf(recipe, inputs.request)
  if (!outcome?.ok) throw new Error(JSON.stringify(inputs.faults))
  const blocks = jobBlocks({ sheet: outcome.value, recipe, inputs })
  const taken = blocks.find((block) => 'name' in block && block.name === 'taken')
  if (taken?.kind !== 'table') throw new Error('nothing was assumed')
  for (const { cells } of taken.rows) expect(cells.value).toMatchObject({ basis: expect.any(String) })
  expect(new Set(taken.rows.map(({ name }) => name)).size).toBe(taken.rows.length)
  expect(workedFrom(inputs).filter((phrase) => phrase.includes('91'))).toHaveLength(1)
})

describe('differencesOf(kept, today)', () => {
  it('names each figure that prints otherwise, with both values and their units', async () => {
    const [kept, today] = [await worked(SAND), await worked(SAND.replace('340', '380'))]
    const differences = differencesOf(kept.figures.blocks, today.figures.blocks)
    // 340 mL and 380 mL of water in a litre of sand: the voids are the share of the water.
    expect(differences.find(({ name }) => name === 'voids.voids')).toMatchObject({
      kept: expect.stringMatching(/^34(\.\d)? ?%/),
      today: expect.stringMatching(/^38(\.\d)? ?%/),
    })
  })

  const list = (name: string, text: string): KeptBlock => ({
    kind: 'list',
    name: 'sequence',
    title: 'In this order',
    items: [{ name, text }],
  })
  const notice = (text: string) => ({ kind: 'notice', tone: 'caution', text }) as const

  it('tells what was taken out and what is new, words and notices too', () => {
    expect(
      differencesOf([list('0-mix', 'Mix.'), notice('Mind the frost.')], [list('0-mix', 'Mix until even.')]),
    ).toEqual([
      { name: 'sequence.0-mix', label: 'In this order', kept: 'Mix.', today: 'Mix until even.' },
      { name: 'notice.Mind the frost.', label: 'Caution', kept: 'Mind the frost.', today: null },
    ])
    expect(differencesOf([], [notice('It burns.')])).toMatchObject([{ kept: null, today: 'It burns.' }])
  })

  it('counts a difference that no print shows for none', () => {
    const of = (value: number): Block[] => [
      {
        kind: 'figures',
        name: 'a',
        title: 'A',
        figures: [{ name: 'b', label: 'B', value: { low: value, typical: value + 4, high: 20 }, unit: 'kg' }],
      },
    ]
    expect(differencesOf(freezeBlocks(of(10), 'metric'), freezeBlocks(of(10.01), 'metric'))).toEqual([])
    expect(differencesOf(freezeBlocks(of(10), 'metric'), freezeBlocks(of(15), 'metric'))).toHaveLength(1)
  })
})

describe('the form of kept figures', () => {
  const figure = { name: 'b', label: 'B', value: 1, unit: 'kg' }
  const with_ = (over: object) => ({
    version: 2,
    inputs: [],
    printed: [],
    blocks: [{ kind: 'figures', name: 'a', title: 'A', figures: [{ ...figure, ...over }] }],
  })

  it.each([
    ['a range out of order', { value: { low: 2, typical: 1, high: 3 } }],
    ['a figure that is none', { value: Number.POSITIVE_INFINITY }],
    ['a figure without a unit', { unit: '' }],
    ['a basis that nobody knows', { basis: 'hearsay' }],
    ['a field that does not belong', { price: 3 }],
  ])('refuses %s', (_, over) => {
    expect(keptFigures.safeParse(with_({})).success).toBe(true)
    expect(keptFigures.safeParse(with_(over)).success).toBe(false)
  })

  it('refuses a version from later', () => {
    expect(() =>
      readKeptFigures({ ...makeKeptFigures({ inputs: [], blocks: [], printed: [] }), version: 3 }),
    ).toThrow()
  })

  it('opens what was stored in the first form, which knew neither drawings nor working nor costs as such', () => {
    const cost = { low: 1200, typical: 1234.56, high: 1300 }
    const stored = {
      version: 1,
      inputs: ['Area: 12 m²'],
      blocks: [
        {
          kind: 'figures',
          name: 'job',
          title: 'The job in a few figures',
          figures: [
            { name: 'made', label: 'Mortar to make', value: { low: 90, typical: 100, high: 110 }, unit: 'L' },
            { name: 'cost-total', label: 'Total, EUR', value: cost, unit: '1' },
          ],
        },
        {
          kind: 'table',
          name: 'quantities',
          title: 'Quantities',
          columns: [
            { key: 'ingredient', head: 'Ingredient' },
            { key: 'mass', head: 'Mass' },
            { key: 'cost', head: 'Cost, EUR' },
          ],
          rows: [
            {
              name: '0-lime',
              cells: {
                ingredient: 'Lime, dry',
                mass: { value: 25, unit: 'kg' },
                cost: { value: cost, unit: '1' },
              },
            },
            { name: '1-sand', cells: { ingredient: 'Sand, damp', mass: null, cost: null } },
          ],
        },
      ],
      printed: [
        { label: 'Mortar to make', value: '100 L (90–110)' },
        { label: 'Total, EUR', value: '1230 (1200–1300)' },
        { label: 'Lime, dry, Mass', value: '25 kg' },
        { label: 'Lime, dry, Cost, EUR', value: '1230 (1200–1300)' },
      ],
    }
    const { version, inputs, printed, blocks } = readKeptFigures(stored)
    expect({ version, inputs }).toEqual({ version: 2, inputs: stored.inputs })
    expect(printed).toEqual(
      stored.printed.map((line) => (line.label.endsWith('EUR') ? { ...line, cost: true } : line)),
    )
    // Costs print to the hundredth, as they did on the sheet.
    expect(namedFigures(blocks as Block[]).map((one) => [one.name, figureText(one, 'metric')])).toEqual([
      ['job.made', '100 L (90–110)'],
      ['job.cost-total', '1234.56 (1200.00–1300.00)'],
      ['quantities.0-lime.mass', '25 kg'],
      ['quantities.0-lime.cost', '1234.56 (1200.00–1300.00)'],
    ])
    const page = renderToStaticMarkup(createElement(KeptBlocks, { blocks, open: true }))
    expect(page).toContain('1234.56')
    expect(page).not.toContain('class="drawn"')
    expect(page).not.toContain('<details')
  })
})
