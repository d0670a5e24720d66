import { NextResponse } from 'next/server'
import { GUEST } from '#lib/access/actor.ts'
import { mayPass, ruleOfPath } from '#lib/access/doors.ts'
import { inLanguage } from '../_words/language.ts'
import { type Asked, actorBehind } from './asked.ts'

/** Whether whoever asks may pass the page's door. What a guest sends in a form goes on: the action answers, and keeps
 * what was typed. */
export async function doorOf({
  nextUrl,
  cookies,
  headers,
  method,
}: Asked): Promise<'open' | 'refused' | 'sign-in'> {
  const rule = ruleOfPath(nextUrl.pathname)
  if (mayPass(GUEST, rule)) return 'open'
  const actor = await actorBehind({ cookies, headers })
  if (mayPass(actor, rule)) return 'open'
  if (actor.kind !== 'guest') return 'refused'
  return method === 'GET' || method === 'HEAD' ? 'sign-in' : 'open'
}

/** Sends a guest to sign in, and from there to where they wanted to go. */
export function sendToSignIn({ nextUrl, language }: Asked, headers: Record<string, string>): Response {
  const to = `${nextUrl.pathname}${nextUrl.search}`
  const address = new URL(inLanguage(`/sign-in?${new URLSearchParams({ to })}`, language), nextUrl)
  return NextResponse.redirect(address, { status: 303, headers: { ...headers, 'Cache-Control': 'no-store' } })
}
