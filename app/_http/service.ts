import { cookies } from 'next/headers'
import { type Answer, type Asked, BACK_COOKIE } from '#lib/auth/service.ts'
import { readSettings } from '#lib/env.ts'
import { inLanguage, linkInLanguage, splitLanguage } from '../_words/language.ts'
import type { Language } from '../_words/languages.ts'
import { isSecure, requestFrom } from './actor.ts'
import { answerProblem, problemOf } from './problem.ts'

/** What signing in through another service needs to know of a request. */
export async function serviceAsked(): Promise<Asked> {
  const jar = await cookies()
  return {
    from: await requestFrom(),
    secure: await isSecure(),
    cookies: Object.fromEntries(jar.getAll().map(({ name, value }) => [name, value])),
  }
}

/** The language of the page from which somebody went to the other service: the address to come back to tells it. */
export function languageBegunIn({ cookies }: Asked): Language {
  const [, back] = Object.entries(cookies).find(([name]) => name.endsWith(BACK_COOKIE)) ?? []
  return back !== undefined && URL.canParse(back) ? splitLanguage(new URL(back).pathname).language : 'en'
}

/** Sends the browser on, here to a page in the language spoken now; without another service nothing is here. */
export function sendOn(answer: Answer | null): Response {
  if (answer === null) return answerProblem(problemOf(404))
  const ours = answer.location.startsWith(`${readSettings().siteUrl}/`)
  const location = ours ? linkInLanguage(answer.location) : inLanguage(answer.location)
  const headers = new Headers({ Location: location, 'Cache-Control': 'no-store' })
  for (const cookie of answer.cookies) headers.append('Set-Cookie', cookie)
  return new Response(null, { status: 303, headers })
}
