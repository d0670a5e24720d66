import { sumOperations } from '#lib/api/sums/index.ts'
import { handlers } from '../../../../_http/answer.ts'
import { answerProblem, problemOf } from '../../../../_http/problem.ts'

type Context = { params: Promise<{ name: string }> }
type Handlers = ReturnType<typeof handlers>

/** Each calculation by the last part of its address. */
const byName = new Map(
  sumOperations.map((operation) => [operation.path.split('/').at(-1) ?? '', handlers(operation)]),
)

const answer = (method: keyof Handlers) => async (request: Request, context: Context) =>
  byName.get((await context.params).name)?.[method](request, context) ?? answerProblem(problemOf(404))

export const GET = answer('GET')
export const HEAD = answer('HEAD')
export const POST = answer('POST')
export const PUT = answer('PUT')
export const PATCH = answer('PATCH')
export const DELETE = answer('DELETE')
