import { asCsv, asJson, HEADS, LISTS, type ListName } from '#lib/api/lists.ts'
import { answerThrown, handlersOf } from '../../../../_http/answer.ts'
import { answerProblem, problemOf } from '../../../../_http/problem.ts'
import { answerStream } from '../../../../_http/stream.ts'

const TYPES = { csv: 'text/csv; charset=utf-8; header=present', json: 'application/json; charset=utf-8' }

const isList = (name: string | undefined): name is ListName =>
  name !== undefined && Object.hasOwn(LISTS, name)

/** A whole list as a file: `cases.csv`, `like.json`, under the parameters of its page. */
export const { GET, HEAD, POST, PUT, PATCH, DELETE } = handlersOf('GET', async (request, { params }) => {
  const { file = '' } = await params
  const [, name, format] = /^([a-z]+)\.(csv|json)$/.exec(file) ?? []
  if (!isList(name)) return answerProblem(problemOf(404))
  try {
    const batches = LISTS[name](new URL(request.url).searchParams)
    const isCsv = format === 'csv'
    return await answerStream(isCsv ? asCsv(HEADS[name], batches) : asJson(name, batches), {
      'Content-Type': isCsv ? TYPES.csv : TYPES.json,
      'Content-Disposition': `attachment; filename="putlog-${file}"`,
      'Cache-Control': 'no-store',
      'Access-Control-Allow-Origin': '*',
      'Cross-Origin-Resource-Policy': 'cross-origin',
    })
  } catch (thrown) {
    return answerThrown(thrown)
  }
})
