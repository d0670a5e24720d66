import { createElement } from 'react'
import { renderToStaticMarkup } from 'react-dom/server'
import { describe, expect, it } from 'vitest'
import { speaking } from '#app/asked.ts'
import { sheetOf } from '#lib/api/job.ts'
import { bytesOf, type KeptBlock, MOST_BYTES, MOST_PRINTED } from '#lib/entry/kept-sheet.ts'
import { recipeBody } from '#lib/entry/recipe.ts'
import { readDemo } from '#lib/workflow/demo-files.ts'
import type { Typed } from '../../app/_http/form.ts'
import { jobBlocks } from '../../app/_kept/job/blocks.ts'
import { KeptBlocks } from '../../app/_kept/kept-blocks.tsx'
import { within } from '../../app/_kept/within.ts'
import { readInputs } from '../../app/recipes/[slug]/job/read-inputs.ts'
import { Sheet } from '../../app/recipes/[slug]/job/sheet.tsx'
import { versionsNow } from '../../app/recipes/[slug]/job/versions.ts'
import { workedFrom } from '../../app/recipes/[slug]/job/worked-from.tsx'

/** Every piece of text that a reader takes in at once: a figure, a cell, a line of a list, a paragraph. */
const LEAVES = ['dt', 'dd', 'th', 'td', 'li', 'p', 'figcaption']
const VOID = ['br', 'wbr', 'img', 'input', 'hr']

/** The texts of a page as it prints, in order; what only a screen shows is left out. */
function leavesOf(html: string): string[] {
  const open: { name: string; hidden: boolean; text: string }[] = [{ name: '', hidden: false, text: '' }]
  const leaves: string[] = []
  for (const [, close, name = '', attributes = '', text] of html.matchAll(
    /<(\/?)([a-z0-9]+)([^>]*)>|([^<]+)/g,
  )) {
    const top = open.at(-1)
    if (top === undefined) throw new Error('more was closed than was opened')
    if (text !== undefined) for (const one of open) one.text += one.hidden || top.hidden ? '' : text
    else if (VOID.includes(name)) for (const one of open) one.text += ' '
    else if (close === '/') {
      open.pop()
      if (LEAVES.includes(name) && !top.hidden) leaves.push(top.text.replace(/\s+/g, ' ').trim())
    } else open.push({ name, hidden: top.hidden || attributes.includes('screen-only'), text: '' })
  }
  return leaves.filter((leaf) => leaf !== '')
}

/** What of the page is not among what is kept; what stands twice on the page must be kept twice. */
function missing(page: readonly string[], kept: readonly string[]): string[] {
  const left = [...kept]
  const byLength = [...page].sort((a, b) => b.length - a.length)
  return byLength.filter((leaf) => {
    const at = [left.indexOf(leaf), left.findIndex((one) => one.includes(leaf))].find((place) => place >= 0)
    if (at === undefined) return true
    left[at] = (left[at] ?? '').replace(leaf, '')
    return false
  })
}

function worked(slug: string, body: unknown, typed: Typed) {
  const recipe = recipeBody.parse(body)
  const inputs = readInputs({ override: 'yes', reason: 'To see', ...typed }, slug, recipe, 1)
  const outcome = inputs.request && sheetOf(recipe, inputs.request)
  if (!outcome?.ok) throw new Error(`${slug} gives no sheet: ${JSON.stringify(outcome ?? inputs.faults)}`)
  const sheet = outcome.value
  const page = renderToStaticMarkup(
    createElement(Sheet, {
      recipe: { slug, body: recipe } as Parameters<typeof Sheet>[0]['recipe'],
      ...{ inputs, sheet, versions: versionsNow(sheet, 1), working: true },
      ...{ workingAddress: '/w', address: '/a', fullAddress: '/f', cardAddress: '/c' },
    }),
  )
  return { page, inputs, blocks: jobBlocks({ sheet, recipe, inputs }) }
}

const keptPage = (blocks: readonly KeptBlock[]) =>
  renderToStaticMarkup(createElement(KeptBlocks, { blocks, open: true }))

/** The drawings of a page, their bare lines. */
const drawnIn = (html: string) => html.match(/<svg class="drawn".*?<\/svg>/gs) ?? []

/** A currency stands behind each amount on the page, and in the name of it where it is kept. */
const CURRENCY = 'XQD'
const asKept = (leaf: string) => leaf.replaceAll(` ${CURRENCY}`, '')
/**
 * What the page prints of its own: what it was worked from and its versions, which a kept sheet has in fields of their
 * own; how to put in one's own figures; and the head of a column that is one with its neighbour there, or for screens.
 */
const ELSEWHERE = new RegExp(
  [
    '^Worked from|^Calculado con|^Recipe revision|^Versión \\d+ de la receta',
    '^Every figure that nobody entered|^Cada cifra que nadie introdujo',
    '^(From|Replace|De|Cambiar)$',
  ].join('|'),
)

const recipes = readDemo()
  .filter(({ kind }) => kind === 'recipe')
  .map(({ slug, revisions }) => [slug, revisions.at(-1)?.body] as const)

/** Everything that the form asks about every ingredient, so that every column has something in it. */
const full = (body: unknown): Record<string, string> => ({
  ...{ box: '15', mixer: '120', hours: '12.5', rate: '31.4', money: CURRENCY },
  ...Object.fromEntries(
    recipeBody
      .parse(body)
      .ingredients.filter(({ role }) => role !== 'water')
      .flatMap(({ material }) => [
        [`pack-${material}`, '25'],
        [`price-${material}`, '1234.56'],
      ]),
  ),
})

const BRICK = { area: '6', 'brick-length': '215', 'brick-width': '102.5', 'brick-height': '65', joint: '10' }
const behind = (number: number, typed: Typed) =>
  Object.fromEntries(Object.entries(typed).map(([name, text]) => [`${name}-${number}`, text]))
const POINTING = {
  use: 'pointing',
  area: '8',
  'unit-length': '300',
  'unit-height': '150',
  joint: '12',
  depth: '25',
}

const JOBS: Record<string, (body: unknown) => Typed> = {
  'a volume': () => ({ use: 'volume', volume: '100' }),
  'pointing with all that can be asked': (body) => ({ ...POINTING, ...full(body) }),
  'two works in US units': (body) => ({
    ...{ use: 'pointing', area: '80', 'unit-length': '12', 'unit-height': '6', joint: '0.5', depth: '1' },
    ...{ 'use-2': 'bedding-brick', 'area-2': '60', 'joint-2': '0.4', ...full(body), units: 'us' },
    ...{ 'brick-length-2': '8.5', 'brick-width-2': '4', 'brick-height-2': '2.5' },
  }),
  'eight works': (body) => ({
    ...{ ...POINTING, ...full(body), ...behind(2, { use: 'bedding-brick', ...BRICK }) },
    ...Object.assign({}, ...[3, 4, 5, 6, 7, 8].map((number) => behind(number, POINTING))),
  }),
}

describe.each(Object.entries(JOBS))('a kept sheet of %s', (_, job) => {
  it.each(recipes)('of %s holds every figure and line that its page prints', (slug, body) => {
    const { page, inputs, blocks } = worked(slug, body, job(body))
    const printed = leavesOf(page)
      .filter((leaf) => !ELSEWHERE.test(leaf))
      .map(asKept)
    expect(printed.length).toBeGreaterThan(20)
    expect(missing(printed, leavesOf(keptPage(blocks)))).toEqual([])
    expect(drawnIn(keptPage(blocks))).toEqual(drawnIn(page))
    const kept = within(workedFrom(inputs), blocks)
    if (!kept.ok) throw new Error(kept.sentences.join(' '))
    expect(kept.figures.printed.length).toBeLessThan(MOST_PRINTED / 2)
    expect(bytesOf(kept.figures)).toBeLessThan(MOST_BYTES / 2)
  })
})

it('the comparison misses each part that is left out', () => {
  const [slug, body] = recipes[0] ?? []
  const { page, blocks } = worked(slug ?? '', body, JOBS['eight works']?.(body) ?? {})
  const printed = leavesOf(page)
    .filter((leaf) => !ELSEWHERE.test(leaf))
    .map(asKept)
  for (const left of blocks) {
    const others = blocks.filter((block) => block !== left)
    expect([left.kind, missing(printed, leavesOf(keptPage(others))).length > 0]).toEqual([left.kind, true])
  }
})

it('a kept sheet in Spanish holds what its Spanish page prints', () => {
  for (const [slug, body] of recipes) {
    const { page, kept } = speaking('es', () => {
      const { page, blocks } = worked(slug, body, { use: 'volume', volume: '100', box: '15', mixer: '120' })
      return { page, kept: keptPage(blocks) }
    })
    const printed = leavesOf(page).filter((leaf) => !ELSEWHERE.test(leaf))
    expect([slug, missing(printed, leavesOf(kept))]).toEqual([slug, []])
  }
})
