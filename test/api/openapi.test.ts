import { existsSync } from 'node:fs'
import { Validator } from '@seriousme/openapi-schema-validator'
import { describe, expect, it } from 'vitest'
import { describeApi } from '#lib/api/openapi.ts'
import { operations } from '#lib/api/operations.ts'

describe('describeApi(operations)', () => {
  it('is a valid OpenAPI 3.1 document', async () => {
    const { valid, errors } = await new Validator().validate(structuredClone(describeApi(operations)))
    expect(errors).toBeUndefined()
    expect(valid).toBe(true)
  }, 60_000)

  it('is told apart from an invalid one by the same validator', async () => {
    const broken = { ...structuredClone(describeApi(operations)), paths: { 'no-slash': { get: {} } } }
    expect((await new Validator().validate(broken)).valid).toBe(false)
  }, 60_000)

  it('gives every operation a name of its own', () => {
    const ids = operations.map(({ id }) => id)
    expect(new Set(ids).size).toBe(ids.length)
  })

  it.each(operations.map(({ path }) => path))('describes %s, for which a route exists', (path) => {
    const folder = path
      .replaceAll('{', '[')
      .replaceAll('}', ']')
      .replace(/(?<=\/sums\/).+/, '[name]')
    expect(existsSync(new URL(`../../app${folder}/route.ts`, import.meta.url))).toBe(true)
  })

  it('lists every field of a path and a query as a parameter', () => {
    const { paths } = describeApi(operations) as {
      paths: Record<string, { get: { parameters: { name: string; in: string; required: boolean }[] } }>
    }
    const parameters = paths['/api/v1/recipes/{slug}']?.get.parameters ?? []
    expect(parameters.map(({ name, in: where, required }) => [name, where, required])).toEqual([
      ['slug', 'path', true],
      ['revision', 'query', false],
    ])
  })
})
