import { cookies } from 'next/headers'
import type { Answer } from '#lib/auth/service.ts'
import { isSecure, requestFrom } from './actor.ts'
import { answerProblem, problemOf } from './problem.ts'

/** What signing in through another service needs to know of a request. */
export async function serviceAsked() {
  const jar = await cookies()
  return {
    from: await requestFrom(),
    secure: await isSecure(),
    cookies: Object.fromEntries(jar.getAll().map(({ name, value }) => [name, value])),
  }
}

/** Sends the browser on; without another service nothing is here. */
export function sendOn(answer: Answer | null): Response {
  if (answer === null) return answerProblem(problemOf(404))
  const headers = new Headers({ Location: answer.location, 'Cache-Control': 'no-store' })
  for (const cookie of answer.cookies) headers.append('Set-Cookie', cookie)
  return new Response(null, { status: 303, headers })
}
