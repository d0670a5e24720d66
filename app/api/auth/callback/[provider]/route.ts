import { speaking } from '#app/asked.ts'
import { endService } from '#lib/auth/service.ts'
import { answerProblem, problemOf } from '../../../../_http/problem.ts'
import { languageBegunIn, sendOn, serviceAsked } from '../../../../_http/service.ts'

/** Where the other service sends the browser back to. */
export async function GET(request: Request, { params }: { params: Promise<{ provider: string }> }) {
  if ((await params).provider !== 'oidc') return answerProblem(problemOf(404))
  const query = Object.fromEntries(new URL(request.url).searchParams)
  const asked = await serviceAsked()
  const language = languageBegunIn(asked)
  const answer = await endService(query, { ...asked, from: { ...asked.from, language } })
  return speaking(language, () => sendOn(answer))
}
