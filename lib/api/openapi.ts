import { z } from 'zod'
import type { Operation } from './operation.ts'
import { problem } from './problem.ts'

type Json = { [key: string]: unknown }

const PROBLEM = { $ref: '#/components/schemas/Problem' }

/** What each refusal means wherever it can occur. */
const REFUSALS: Record<number, string> = {
  400: 'The body is not JSON',
  404: 'No such entry is published',
  405: 'The address answers another method',
  413: 'The body is too large',
  415: 'The body is not sent as JSON',
  422: 'Some fields cannot be used; `errors` names each',
  500: 'A fault of the site',
  503: 'The database does not answer just now',
}

/** The OpenAPI 3.1 document of the given operations, made from their schemas. */
export function describeApi(operations: readonly Operation[]): Json {
  const paths: Record<string, Json> = {}
  for (const operation of operations) {
    paths[operation.path] ??= {}
    Object.assign(paths[operation.path] as Json, { [operation.method.toLowerCase()]: describe(operation) })
  }
  return {
    openapi: '3.1.0',
    info: {
      title: 'Putlog',
      version: '1',
      summary:
        'Traditional mortars: proportions with their sources, what became of them in walls, and the site arithmetic.',
      license: { name: 'Content: CC BY 4.0', identifier: 'CC-BY-4.0' },
    },
    servers: [{ url: '/' }],
    paths,
    components: { schemas: { Problem: schemaOf(problem, 'output') } },
  }
}

function describe({ id, summary, path, method, params, query, body, answer }: Operation): Json {
  const refusals = [405, 500, 503, ...(query || body || params ? [422] : [])]
  if (path.includes('{')) refusals.push(404)
  if (body) refusals.push(400, 413, 415)
  const parameters = [...parametersOf(params, 'path'), ...parametersOf(query, 'query')]
  return {
    operationId: id,
    summary,
    ...(parameters.length > 0 && { parameters }),
    ...(body && {
      requestBody: { required: true, content: { 'application/json': { schema: schemaOf(body, 'input') } } },
    }),
    responses: {
      200: {
        description: 'As asked',
        content: { 'application/json': { schema: schemaOf(answer, 'output') } },
      },
      ...(method === 'GET' && { 304: { description: 'Unchanged since the tag that was sent' } }),
      ...Object.fromEntries(
        refusals.map((status) => [
          status,
          {
            description: REFUSALS[status],
            content: { 'application/problem+json': { schema: PROBLEM } },
          },
        ]),
      ),
    },
  }
}

function parametersOf(schema: z.ZodType | undefined, where: 'path' | 'query'): Json[] {
  if (!schema) return []
  const { properties = {}, required = [] } = schemaOf(schema, 'input') as {
    properties?: Record<string, unknown>
    required?: string[]
  }
  return Object.entries(properties).map(([name, schema]) => ({
    name,
    in: where,
    required: where === 'path' || required.includes(name),
    schema,
  }))
}

function schemaOf(schema: z.ZodType, io: 'input' | 'output'): Json {
  const { $schema: _, ...rest } = z.toJSONSchema(schema, { io })
  return rest
}
