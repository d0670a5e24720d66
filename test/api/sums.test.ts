import { describe, expect, it } from 'vitest'
import { problem } from '#lib/api/problem.ts'
import { sumOperations } from '#lib/api/sums/index.ts'
import { content } from '#lib/content/index.ts'
import { locatorFault } from '#lib/content/locator.ts'
import type { Range } from '#lib/mortar/range.ts'
import { shownUnit } from '#lib/mortar/units.ts'
import { isUnit } from '../../app/_ui/units.ts'
import { words } from '../../app/_words/index.ts'
import { GET, POST } from '../../app/api/v1/sums/[name]/route.ts'
import { expectWorking } from '../mortar/working.ts'
import { SUM_EXAMPLES } from './sum-examples.ts'

const ask = (name: string, body: unknown, method: 'GET' | 'POST' = 'POST') =>
  (method === 'GET' ? GET : POST)(
    new Request(`http://site.test/api/v1/sums/${name}`, {
      method,
      ...(method === 'POST' && {
        body: JSON.stringify(body),
        headers: { 'content-type': 'application/json' },
      }),
    }),
    { params: Promise.resolve({ name }) },
  )
const nameOf = (path: string) => path.split('/').at(-1) ?? ''

interface Working {
  readonly means: string
  readonly unit: string
  readonly source?: string
  readonly symbol: string
  readonly numbers: string
  readonly result: Range
}
/** Every value under a name, anywhere in an answer. */
const valuesOf = (answer: unknown, name: string): unknown[] => {
  const found: unknown[] = []
  JSON.stringify(answer, (key, value: unknown) => {
    if (key === name) found.push(value)
    return value
  })
  return found
}
const answers = async () =>
  Promise.all(
    sumOperations.map(async ({ path }) => (await ask(nameOf(path), SUM_EXAMPLES[nameOf(path)])).json()),
  )

describe('POST /api/v1/sums/{name}', () => {
  it('has an example of every calculation', () => {
    expect(Object.keys(SUM_EXAMPLES).sort()).toEqual(sumOperations.map(({ path }) => nameOf(path)).sort())
  })

  it.each(sumOperations.map((operation) => [nameOf(operation.path), operation] as const))(
    'answers %s as its schema says, with finite numbers, twice the same',
    async (name, operation) => {
      const response = await ask(name, SUM_EXAMPLES[name])
      const text = await response.text()
      expect(response.status, text).toBe(200)
      expect(operation.answer.parse(JSON.parse(text))).toEqual(JSON.parse(text))
      expect(text).not.toContain('NaN')
      expect(await (await ask(name, SUM_EXAMPLES[name])).text()).toBe(text)
    },
    60_000,
  )

  it.each(Object.keys(SUM_EXAMPLES))('refuses an empty body for %s and names its fields', async (name) => {
    const response = await ask(name, {})
    expect(response.status).toBe(422)
    expect(problem.parse(await response.json()).errors?.length).toBeGreaterThan(0)
  })

  it('names the field that the sums refuse', async () => {
    const response = await ask('grade-sand', {
      sieves: [
        { openingMm: 1, retainedG: 10 },
        { openingMm: 2, retainedG: 10 },
      ],
      panG: 1,
    })
    expect(response.status).toBe(422)
    const { errors } = problem.parse(await response.json())
    expect(errors?.map(({ field, code }) => [field, code])).toEqual([['sieves.1.openingMm', 'out-of-order']])
  })

  it('answers 404 to a calculation that does not exist and 405 to a read', async () => {
    expect((await ask('weigh-the-moon', {})).status).toBe(404)
    expect((await ask('grade-sand', undefined, 'GET')).status).toBe(405)
  })

  it('names only sources that the site has, at places that fit them', async () => {
    const { sources } = content()
    const named = (await answers())
      .flatMap((answer) => valuesOf(answer, 'source'))
      .filter((source) => source !== null)
    expect(named.length).toBeGreaterThan(20)
    for (const source of named as string[]) {
      const [id = '', ...locator] = source.split(', ')
      const known = sources.get(id)
      expect(known, source).toBeDefined()
      if (known && locator.length > 0)
        expect(locatorFault(known.type, locator.join(', ')), source).toBeUndefined()
    }
  }, 60_000)

  it('gives every line of working in a unit that can be shown', async () => {
    const steps = (await answers()).flatMap((answer) => valuesOf(answer, 'steps')).flat() as Working[]
    for (const { unit } of steps)
      for (const system of ['metric', 'us'] as const) expect(isUnit(shownUnit(unit, system)), unit).toBe(true)
  }, 60_000)

  it('prints working that comes to its result', async () => {
    const steps = (await answers()).flatMap((answer) => valuesOf(answer, 'steps')).flat() as Working[]
    for (const step of steps) expectWorking(step)
  }, 60_000)

  it('has words for every line of working', async () => {
    const steps = (await answers()).flatMap((answer) => valuesOf(answer, 'steps')).flat() as Working[]
    expect(steps.length).toBeGreaterThan(100)
    const t = words('steps')
    for (const { means } of steps) expect(t.has(means as never), means).toBe(true)
  }, 60_000)
})
