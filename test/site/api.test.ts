import { Validator } from '@seriousme/openapi-schema-validator'
import { describe, expect, it } from 'vitest'
import type { Operation } from '#lib/api/operation.ts'
import { operations } from '#lib/api/operations.ts'
import { problem } from '#lib/api/problem.ts'
import { SITE } from './pages.ts'

const WORK = {
  kind: 'pointing-rubble',
  areaM2: 24,
  jointShare: 0.2,
  depthMm: { low: 20, typical: 25, high: 30 },
}
const JOB = {
  recipe: 'hot-lime-for-rubble',
  work: WORK,
  limeState: 'lump-quicklime',
  packsKg: { 'lime-fat': 25 },
}

const operationOf = (id: string): Operation => {
  const found = operations.find((operation) => operation.id === id)
  if (!found) throw new Error(`no operation ${id}`)
  return found
}

const post = (body: unknown) =>
  fetch(`${SITE}/api/v1/job`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(body),
  })

describe('GET', () => {
  it.each([
    ['listRecipes', '/api/v1/recipes'],
    ['listRecipes', '/api/v1/recipes?unit=limestone&use=pointing&limit=1'],
    ['readRecipe', '/api/v1/recipes/hot-lime-for-rubble'],
    ['readRecipe', '/api/v1/recipes/hot-lime-for-rubble?revision=1'],
    ['listCases', '/api/v1/cases'],
    ['listCases', '/api/v1/cases?country=PT&minYears=1'],
    ['listTables', '/api/v1/tables'],
    ['readDescription', '/api/v1/openapi.json'],
    ['readHealth', '/api/health'],
  ])('%s answers as its own schema says at %s', async (id, path) => {
    const response = await fetch(SITE + path)
    expect(response.status).toBe(200)
    expect(response.headers.get('access-control-allow-origin')).toBe('*')
    expect(operationOf(id).answer.safeParse(await response.json()).error).toBeUndefined()
  })

  it('readCase answers as its own schema says for every case, reached page by page', async () => {
    const slugs: string[] = []
    for (let after: string | null = ''; after !== null; ) {
      const answer = await fetch(`${SITE}/api/v1/cases?limit=7${after && `&after=${after}`}`)
      const page = (await answer.json()) as { cases: { slug: string }[]; total: number; next: string | null }
      slugs.push(...page.cases.map(({ slug }) => slug))
      after = page.next
      if (after === null) expect(slugs).toHaveLength(page.total)
    }
    expect(new Set(slugs).size).toBe(slugs.length)
    const answers = await Promise.all(
      slugs.map(async (slug) => (await fetch(`${SITE}/api/v1/cases/${slug}`)).json()),
    )
    const { answer } = operationOf('readCase')
    expect(answers.flatMap((one) => answer.safeParse(one).error ?? [])).toEqual([])
  })

  it('pages through recipes without losing or repeating one', async () => {
    const slugs: string[] = []
    for (let after: string | null = ''; after !== null; ) {
      const answer = await fetch(`${SITE}/api/v1/recipes?limit=5${after && `&after=${after}`}`)
      const page = (await answer.json()) as {
        recipes: { slug: string }[]
        total: number
        next: string | null
      }
      slugs.push(...page.recipes.map(({ slug }) => slug))
      after = page.next
      if (after === null) expect(slugs).toHaveLength(page.total)
    }
    expect(new Set(slugs).size).toBe(slugs.length)
  })

  it('is answered with 304 while nothing changed', async () => {
    const first = await fetch(`${SITE}/api/v1/recipes/hot-lime-for-rubble`)
    const again = await fetch(`${SITE}/api/v1/recipes/hot-lime-for-rubble`, {
      headers: { 'if-none-match': first.headers.get('etag') ?? '' },
    })
    expect(again.status).toBe(304)
  })

  it.each([
    ['/api/v1/recipes/no-such-recipe', 404],
    ['/api/v1/cases/no-such-case', 404],
    ['/api/v1/recipes/hot-lime-for-rubble?revision=99', 404],
    ['/api/v1/nope', 404],
    ['/api/nope/deeper', 404],
    ['/api/v1/recipes/Not%20A%20Slug', 422],
    ['/api/v1/recipes?use=flying', 422],
    ['/api/v1/recipes?stray=1', 422],
    ['/api/v1/cases?after=nonsense', 422],
    ['/api/v1/job', 405],
  ])('%s is refused with %d and problem details', async (path, status) => {
    const response = await fetch(SITE + path)
    expect(response.status).toBe(status)
    expect(response.headers.get('content-type')).toBe('application/problem+json')
    expect(problem.parse(await response.json()).status).toBe(status)
  })

  it.each(['POST', 'PUT', 'PATCH', 'DELETE'])(
    '%s at an unknown address gets problem details too',
    async (method) => {
      const response = await fetch(`${SITE}/api/v1/nope`, { method })
      expect(response.status).toBe(404)
      expect(problem.parse(await response.json()).status).toBe(404)
    },
  )

  it('describes itself in valid OpenAPI', async () => {
    const description = (await (await fetch(`${SITE}/api/v1/openapi.json`)).json()) as Record<string, unknown>
    expect((await new Validator().validate(description)).errors).toBeUndefined()
  })
})

describe('POST /api/v1/job', () => {
  it('answers with a sheet, its versions, and mortar in place as worked by hand', async () => {
    const response = await post(JOB)
    expect(response.status).toBe(200)
    const answer = (await response.json()) as {
      edition: string
      recipe: { revision: number }
      sheet: { netL: { low: number; typical: number; high: number } }
    }
    expect(operationOf('workJob').answer.safeParse(answer).error).toBeUndefined()
    // 24 m² · 0.2 · 25 mm = 120 L
    expect(answer.sheet.netL.typical).toBeCloseTo(120, 9)
    expect(answer.sheet.netL.low).toBeLessThan(120)
    expect(answer.edition).toMatch(/^[0-9a-f]{12}$/)
  })

  it('adds up several works, each with its own loss', async () => {
    const further = { work: { kind: 'plaster', areaM2: 10, coat1Mm: 12 }, lossPercent: 5 }
    const response = await post({ ...JOB, lossPercent: 10, furtherWorks: [further] })
    const { sheet } = operationOf('workJob').answer.parse(await response.json()) as {
      sheet: { mortarL: { typical: number }; works: { mortarL: { typical: number } }[] }
    }
    // 24 m² · 0.2 · 25 mm = 120 L, 132 with 10 % lost; 10 m² · 12 mm = 120 L, 126 with 5 % lost.
    expect(sheet.works.map(({ mortarL }) => mortarL.typical)).toEqual([
      expect.closeTo(132, 9),
      expect.closeTo(126, 9),
    ])
    expect(sheet.mortarL.typical).toBeCloseTo(258, 9)
  })

  it('takes the site’s own figures of a material in place of those it knows', async () => {
    const given = { low: 0.8, typical: 0.8, high: 0.8 }
    const figures = { materialFigures: { 'lime-fat': { freeCaO: 0.8 } } }
    const response = await post({ ...JOB, ...figures })
    const { sheet } = operationOf('workJob').answer.parse(await response.json()) as {
      sheet: { taken: { field: string }[] }
    }
    expect(sheet.taken.find(({ field }) => field === 'materials.lime-fat.freeCaO')).toEqual({
      field: 'materials.lime-fat.freeCaO',
      value: given,
      unit: '1',
      basis: 'measured',
    })
  })

  it('gives the same answer to the same question', async () => {
    const [one, two] = await Promise.all([post(JOB), post(JOB)])
    expect(await one.text()).toBe(await two.text())
  })

  it.each([
    [{ ...JOB, work: { ...WORK, areaM2: -1 } }, 'work.areaM2', 'not-positive'],
    [{ ...JOB, work: { ...WORK, openingsM2: 30 } }, 'work.openingsM2', 'too-large'],
    [{ ...JOB, work: { kind: 'pointing-rubble' } }, 'work.areaM2', 'required'],
    [{ ...JOB, work: { kind: 'flying' } }, 'work.kind', 'unknown'],
    [{ ...JOB, lossPercent: 'much' }, 'lossPercent', 'not-a-number'],
    [{ ...JOB, sandMoisturePercent: 90 }, 'sandMoisturePercent', 'too-large'],
    [
      { ...JOB, furtherWorks: [{ work: { ...WORK, areaM2: -1 } }] },
      'furtherWorks.0.work.areaM2',
      'not-positive',
    ],
    [{ ...JOB, furtherWorks: Array(8).fill({ work: WORK }) }, 'furtherWorks', 'too-many'],
    [
      { ...JOB, materialFigures: { 'lime-fat': { freeCaO: 3 } } },
      'materialFigures.lime-fat.freeCaO',
      'too-large',
    ],
    [{ ...JOB, materialFigures: { cheese: { freeCaO: 0.9 } } }, 'materialFigures.cheese', 'unknown'],
    [{ ...JOB, assumed: { air: 2 } }, 'assumed.air', 'too-large'],
    [{ ...JOB, stray: 1 }, 'stray', 'unknown-field'],
    [{ ...JOB, recipe: 'cement-render-over-earth' }, 'override.reason', 'empty'],
  ])('answers 422 to %j, naming the field', async (body, field, code) => {
    const response = await post(body)
    expect(response.status).toBe(422)
    const { errors } = problem.parse(await response.json())
    expect(errors).toContainEqual(expect.objectContaining({ field, code }))
  })

  it('works a hazard for a stated reason and carries it in the answer', async () => {
    const response = await post({
      ...JOB,
      recipe: 'cement-render-over-earth',
      limeState: 'dry-hydrate',
      override: { reason: 'to show it' },
    })
    expect(response.status).toBe(200)
    expect(await response.json()).toMatchObject({
      recipe: { standing: 'known-hazard' },
      override: { reason: 'to show it' },
    })
  })
})
