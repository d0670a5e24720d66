import { STATUS_CODES } from 'node:http'
import type { Problem } from '#lib/api/problem.ts'
import { type FieldFault, Refusal, type RefusalCode } from '#lib/errors.ts'
import { words } from '../_words/index.ts'
import { faultSentence } from './fault-sentence.ts'
import { refusalSentence } from './refusal-sentence.ts'

const STATUSES: Record<RefusalCode, number> = {
  'not-found': 404,
  forbidden: 403,
  conflict: 409,
  invalid: 422,
  'too-many': 429,
  unavailable: 503,
}

/**
 * Problem details for a status, in words where there are some to say.
 *
 * @param labelOf what people call a field; programs know it by its path
 */
export function problemOf(
  status: number,
  detail?: string,
  faults: readonly FieldFault[] = [],
  labelOf = (field: string) => field,
): Problem {
  return {
    type: 'about:blank',
    title: STATUS_CODES[status] ?? String(status),
    status,
    ...(detail !== undefined && { detail }),
    ...(faults.length > 0 && {
      errors: faults.map((fault) => ({
        ...fault,
        detail: faultSentence(fault, labelOf(fault.field) || words('faults')('request.body')),
      })),
    }),
  }
}

/** Answers with problem details as JSON. */
export const answerProblem = (problem: Problem, headers: Record<string, string> = {}): Response =>
  new Response(JSON.stringify(problem), {
    status: problem.status,
    headers: { 'Content-Type': 'application/problem+json', 'Cache-Control': 'no-store', ...headers },
  })

/**
 * What a thrown thing means to the one who asked. Refusals say why; a database that is away says so; all
 * else is a fault of ours, logged in full and shown as one neutral sentence.
 */
export function problemOfThrown(thrown: unknown, labelOf?: (field: string) => string): Problem {
  if (thrown instanceof Refusal)
    return problemOf(STATUSES[thrown.code], refusalSentence(thrown.message), thrown.faults, labelOf)
  console.error(thrown)
  return isDatabaseFault(thrown) ? problemOf(503) : problemOf(500)
}

/** Errors of the database client carry one of these names, whatever their cause. */
function isDatabaseFault(thrown: unknown): boolean {
  if (!(thrown instanceof Error)) return false
  if (/^(PrismaClient|DriverAdapter)/.test(thrown.name)) return true
  // A connection that could not be opened in time comes from the driver as it is.
  if (/^Connection terminated/.test(thrown.message)) return true
  return thrown.cause instanceof Error && isDatabaseFault(thrown.cause)
}
