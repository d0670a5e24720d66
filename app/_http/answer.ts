import { createHash } from 'node:crypto'
import type { z } from 'zod'
import { faultsOf } from '#lib/api/faults.ts'
import type { Operation } from '#lib/api/operation.ts'
import { Refusal } from '#lib/errors.ts'
import { words } from '../_words/index.ts'
import { readJson } from './body.ts'
import { answerProblem, problemOf, problemOfThrown } from './problem.ts'
import { MAX_BODY } from './security.ts'

type Context = { params: Promise<Record<string, string>> }
export type Handler = (request: Request, context: Context) => Promise<Response>

const METHODS = ['GET', 'HEAD', 'POST', 'PUT', 'PATCH', 'DELETE'] as const

/**
 * The handlers of a route from its operation. Every method that it does not offer answers 405.
 *
 * @example export const { GET, HEAD, POST, PUT, PATCH, DELETE } = handlers(recipesOperation)
 */
export function handlers<P, Q, B, A>(
  operation: Operation<P, Q, B, A>,
): Record<(typeof METHODS)[number], Handler> {
  return handlersOf(operation.method, (request, context) => perform(operation, request, context))
}

/** The handlers of a route that answers one method, GET with HEAD, by itself. */
export function handlersOf(
  method: Operation['method'],
  run: Handler,
): Record<(typeof METHODS)[number], Handler> {
  const allowed = method === 'GET' ? ['GET', 'HEAD'] : ['POST']
  const refuse: Handler = async () =>
    answerProblem(problemOf(405, words('faults')('request.method', { allowed: allowed.join(', ') })), {
      Allow: allowed.join(', '),
    })
  const choose = (method: string) => (allowed.includes(method) ? run : refuse)
  return {
    GET: choose('GET'),
    HEAD: choose('HEAD'),
    POST: choose('POST'),
    PUT: refuse,
    PATCH: refuse,
    DELETE: refuse,
  }
}

async function perform<P, Q, B, A>(
  operation: Operation<P, Q, B, A>,
  request: Request,
  context: Context,
): Promise<Response> {
  try {
    const body = operation.body ? await bodyOf(request) : undefined
    if (body instanceof Response) return body
    const answer = await operation.run({
      params: accept(operation.params, await context.params),
      query: accept(operation.query, queryOf(request)),
      body: accept(operation.body, body),
    })
    return answerJson(request, answer)
  } catch (thrown) {
    return answerThrown(thrown)
  }
}

/** The answer to what was thrown on the way to one. */
export function answerThrown(thrown: unknown): Response {
  const problem = problemOfThrown(thrown)
  return answerProblem(problem, problem.status === 503 ? { 'Retry-After': '5' } : {})
}

/** What the schema makes of a value; an operation without one ignores it. */
function accept<T>(schema: z.ZodType<T> | undefined, value: unknown): T {
  if (!schema) return undefined as T
  const parsed = schema.safeParse(value)
  if (parsed.success) return parsed.data
  throw new Refusal('invalid', words('faults')('request.invalid'), faultsOf(parsed.error.issues, value))
}

async function bodyOf(request: Request): Promise<unknown> {
  const t = words('faults')
  if (!/^application\/(?:[a-z.+-]+\+)?json\b/i.test(request.headers.get('content-type') ?? ''))
    return answerProblem(problemOf(415, t('request.type')))
  const read = await readJson(request, MAX_BODY)
  if (read.ok) return read.value
  return read.why === 'too-large'
    ? answerProblem(problemOf(413, t('request.too-large', { limit: MAX_BODY })))
    : answerProblem(problemOf(400, t('request.not-json')))
}

/** What an address asks: of a name that stands more than once all values. Empty ones are no answer. */
function queryOf(request: Request): Record<string, string | string[]> {
  const { searchParams } = new URL(request.url)
  return Object.fromEntries(
    [...new Set(searchParams.keys())].flatMap((name) => {
      const [first, ...more] = searchParams.getAll(name).filter((value) => value !== '')
      return first === undefined ? [] : [[name, more.length > 0 ? [first, ...more] : first]]
    }),
  )
}

/** JSON that may be kept for a minute and is asked about again by its tag. */
function answerJson(request: Request, value: unknown): Response {
  const text = JSON.stringify(value)
  const headers = new Headers({ 'Content-Type': 'application/json; charset=utf-8' })
  if (request.method === 'POST') {
    headers.set('Cache-Control', 'no-store')
    return new Response(text, { headers })
  }
  const tag = `W/"${createHash('sha256').update(text).digest('base64url').slice(0, 22)}"`
  headers.set('ETag', tag)
  headers.set('Cache-Control', 'public, max-age=60')
  headers.set('Access-Control-Allow-Origin', '*')
  headers.set('Cross-Origin-Resource-Policy', 'cross-origin')
  const known = request.headers.get('if-none-match')?.split(/\s*,\s*/) ?? []
  return known.includes(tag) ? new Response(null, { status: 304, headers }) : new Response(text, { headers })
}
