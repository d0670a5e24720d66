import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { parse } from 'yaml'
import { sheetOf } from '#lib/api/job.ts'
import { recipeBody } from '#lib/entry/recipe.ts'
import { ownName } from '../../app/recipes/[slug]/job/own-figures.ts'
import { allFields, asItWouldBeSent, readInputs } from '../../app/recipes/[slug]/job/read-inputs.ts'

const FOLDER = 'content/demo/recipes'
const RECIPES = readdirSync(FOLDER).map((file) => {
  const { body } = parse(readFileSync(`${FOLDER}/${file}`, 'utf8')) as { body: unknown }
  return [file.replace('.yaml', ''), recipeBody.parse(body)] as const
})
const SENT = { override: 'yes', reason: 'to see' }

describe.each(RECIPES)('the job sheet of %s', (slug, recipe) => {
  const inputs = readInputs(SENT, slug, recipe, 1)
  if (!inputs.request) throw new Error(`no request: ${JSON.stringify(inputs.faults)}`)
  const outcome = sheetOf(recipe, inputs.request)
  if (!outcome.ok) throw new Error(`no sheet: ${JSON.stringify(outcome.faults)}`)

  test('has a field for one’s own in place of each figure that it took, save for what nobody can measure', () => {
    const names = new Set(allFields(inputs).map(({ name }) => name))
    const without = outcome.value.taken.filter(({ field }) => !names.has(ownName(field)))
    expect(without.map(({ field }) => field).filter((field) => field !== 'assumed.dampness')).toEqual([])
  })

  test('asks the same once its examples stand in the address', () => {
    expect(readInputs(asItWouldBeSent(inputs), slug, recipe, 1).request).toEqual(inputs.request)
  })

  test('takes each of one’s own figures as it was typed, shares in per cent', () => {
    const own = inputs.own.flatMap(({ fields }) => fields)
    for (const { name, path, unit, known } of own) {
      if (!known) continue
      const { request, faults } = readInputs({ ...SENT, [name]: String(known.typical) }, slug, recipe, 1)
      expect(faults).toEqual([])
      const [, material = '', property = ''] = path.split('.')
      const taken = request?.materialFigures?.[material] as Record<string, number> | undefined
      expect(taken?.[property]).toBeCloseTo(known.typical / (unit === '%' ? 100 : 1), 6)
    }
  })
})
