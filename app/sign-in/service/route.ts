import { beginService } from '#lib/auth/service.ts'
import { pathWithin } from '../../_http/actor.ts'
import { answerProblem, problemOf } from '../../_http/problem.ts'
import { isOurs } from '../../_http/same-origin.ts'
import { sendOn, serviceAsked } from '../../_http/service.ts'
import { inLanguage } from '../../_words/language.ts'

/** Goes to the other service. A link, since the security policy lets no form lead to another host. */
export async function GET(request: Request): Promise<Response> {
  if (!isOurs(request)) return answerProblem(problemOf(403))
  const back = inLanguage(pathWithin(new URL(request.url).searchParams.get('to') ?? undefined))
  return sendOn(await beginService(back, await serviceAsked()))
}
