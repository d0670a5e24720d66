import { createHash } from 'node:crypto'
import { describe, expect, it } from 'vitest'
import { sheetOf } from '#lib/api/job.ts'
import { recipeBody } from '#lib/entry/recipe.ts'
import type { JobSheet } from '#lib/mortar/job-types.ts'
import { exactly } from '#lib/mortar/range.ts'
import { readDemo } from '#lib/workflow/demo-files.ts'
import { changesSince } from '../../app/_ui/changes-since.ts'
import { digestOf, shorterDigestsOf } from '../../app/recipes/[slug]/job/figures.ts'
import { readInputs } from '../../app/recipes/[slug]/job/read-inputs.ts'

const slug = 'hot-lime-for-rubble'
const job = {
  use: 'pointing-rubble',
  area: '24',
  depth: '25',
  box: '15',
  mixer: '120',
  hours: '8',
  rate: '30',
}

function sheet(): JobSheet {
  const body = readDemo()
    .find((one) => one.slug === slug)
    ?.revisions.at(-1)?.body
  const recipe = recipeBody.parse(body)
  const { request } = readInputs(job, slug, recipe, 1)
  const outcome = request && sheetOf(recipe, request)
  if (!outcome?.ok) throw new Error('the demo recipe gives a sheet')
  return outcome.value
}

const before = sheet()
const { batch, cost } = before
if (!batch || !cost?.labour) throw new Error('a box, a mixer and labour were entered')
const other = exactly(7)

describe('digestOf(sheet)', () => {
  it.each<[string, Partial<JobSheet>]>([
    ['the first water of one load', { batch: { ...batch, firstChargeL: other } }],
    ['the likely water of one load', { batch: { ...batch, likelyTotalL: other } }],
    ['what one load makes', { batch: { ...batch, makesL: other } }],
    ['labour', { cost: { ...cost, labour: other } }],
    ['how long a material keeps', { storage: [{ material: 'lime-fat', id: 'sealed-and-dry', days: other }] }],
    ['a figure in a warning', { warnings: [{ id: 'box-rounding', value: 7, unit: '%' }] }],
  ])('changes with %s, which shorter digests do not', (_, changed) => {
    const after = { ...before, ...changed }
    expect(digestOf(after)).not.toBe(digestOf(before))
    expect(shorterDigestsOf(after)).toEqual(shorterDigestsOf(before))
  })

  it('changes with what the first addresses covered, as those do', () => {
    const after = { ...before, netL: other }
    expect(digestOf(after)).not.toBe(digestOf(before))
    expect(shorterDigestsOf(after)).not.toEqual(shorterDigestsOf(before))
  })

  it('stays when figures change that are rounded away', () => {
    const { low, typical, high } = before.mortarL
    const near = { low, typical: typical * (1 + 1e-9), high }
    expect(digestOf({ ...before, mortarL: near })).toBe(digestOf(before))
  })
})

describe('an address of before the batch card was covered', () => {
  const now = { edition: 'e2', sums: 1, digest: digestOf(before), shorter: shorterDigestsOf(before) }
  const [first = ''] = now.shorter

  it('says nothing where nothing that it covers has changed', () => {
    expect(changesSince({ ed: 'e2', sums: '1', is: first }, now)).toBeNull()
  })

  it('says that it covers fewer figures where the content has changed', () => {
    expect(changesSince({ ed: 'e1', sums: '1', is: first }, now)).toEqual({
      edition: { before: 'e1', now: 'e2' },
      sums: null,
      figures: 'same',
      partly: true,
    })
  })

  it('says that a figure differs where one does', () => {
    const is = createHash('sha256').update('another sheet').digest('hex').slice(0, 10)
    expect(changesSince({ ed: 'e2', sums: '1', is }, now)).toMatchObject({
      figures: 'differs',
      partly: false,
    })
  })
})
