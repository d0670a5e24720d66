import { handlersOf } from '../../_http/answer.ts'
import { answerProblem, problemOf } from '../../_http/problem.ts'
import type { BenchPageOf } from './bench-page.tsx'
import { asCsvFile, asJsonFile, downloadOf } from './download.ts'

const TYPES = { csv: 'text/csv; charset=utf-8; header=present', json: 'application/json; charset=utf-8' }

/**
 * The route of a result as a file, under the parameters of its page. Inputs that give no result are told as
 * the page tells them.
 */
export const fileHandlers = (format: 'csv' | 'json', named: (name: string) => BenchPageOf | undefined) =>
  handlersOf('GET', async (request, { params }) => {
    const { name = '' } = await params
    const of = named(name)
    if (!of) return answerProblem(problemOf(404))
    const made = downloadOf(of.calculation, new URL(request.url).searchParams)
    if (!made.ok) {
      const sentences = made.faults.map(({ sentence }) => sentence)
      return answerProblem(problemOf(422, sentences.join(' ')))
    }
    const body = format === 'csv' ? asCsvFile(made) : JSON.stringify(asJsonFile(of.calculation, made))
    return new Response(body, {
      headers: {
        'Content-Type': TYPES[format],
        'Content-Disposition': `attachment; filename="putlog-${name}.${format}"`,
        'Cache-Control': 'no-store',
        'Access-Control-Allow-Origin': '*',
        'Cross-Origin-Resource-Policy': 'cross-origin',
      },
    })
  })
