import NextAuth, { type AuthOptions } from 'next-auth'
import type { OidcSettings } from '#lib/env.ts'
import { readSettings, setAuthAddress } from '#lib/env.ts'
import { authSecret } from './secret.ts'
import { type ServicePerson, signInFromService } from './service-person.ts'
import { SESSION_S, sessionCookieName } from './session-token.ts'
import type { From } from './sign-in.ts'

/** Every call of next-auth is made for one request: its options hold where it comes from and whether by https. */
export interface Asked {
  readonly from: From
  readonly secure: boolean
  /** Cookies of the request, by name. */
  readonly cookies: Readonly<Record<string, string>>
}

/** What the browser is told: where to go, with which cookies (whole `Set-Cookie` headers). */
export interface Answer {
  readonly location: string
  readonly cookies: readonly string[]
}

/** How the name of the cookie ends that holds the address to come back to. */
export const BACK_COOKIE = 'putlog-back'

/** Where a sign-in that failed leads. */
const FAILED = '/sign-in?problem=service'

/**
 * Begins to sign in through the provider of OIDC_ISSUER: an address there, with state, nonce and the PKCE challenge
 * bound to this browser by cookies.
 *
 * @param back path of this site to come back to
 */
export async function beginService(back: string, asked: Asked): Promise<Answer | null> {
  const { oidc, siteUrl } = readSettings()
  if (oidc === undefined) return null
  const csrf = await call(oidc, asked, { method: 'GET', path: ['csrf'], query: {} })
  const cookies = { ...asked.cookies, ...pairs(csrf.cookies) }
  const { csrfToken } = csrf.body as { csrfToken: string }
  const body = { csrfToken, callbackUrl: siteUrl + back, json: 'false' }
  const begun = await call(
    oidc,
    { ...asked, cookies },
    { method: 'POST', path: ['signin', 'oidc'], query: {}, body },
  )
  return { location: wherever(begun.location), cookies: [...csrf.cookies, ...begun.cookies] }
}

/** Ends it: the provider has sent the browser back with these parameters. */
export async function endService(
  query: Readonly<Record<string, string>>,
  asked: Asked,
): Promise<Answer | null> {
  const { oidc } = readSettings()
  if (oidc === undefined) return null
  const ended = await call(oidc, asked, { method: 'GET', path: ['callback', 'oidc'], query })
  return { location: wherever(ended.location), cookies: ended.cookies }
}

/** Where an answer leads; pages of next-auth's own, which this site does not have, mean that it failed. */
const wherever = (location: string | undefined): string =>
  location === undefined || location.startsWith(`${readSettings().siteUrl}/api/auth/`) ? FAILED : location

function optionsFor(oidc: OidcSettings, { from, secure }: Asked): AuthOptions {
  const cookie = (name: string, maxAge?: number) => ({
    name: `${secure ? '__Secure-' : ''}${name}`,
    options: {
      httpOnly: true,
      sameSite: 'lax',
      path: '/',
      secure,
      ...(maxAge !== undefined && { maxAge }),
    } as const,
  })
  const session = { ...cookie('putlog-session'), name: sessionCookieName(secure) }
  return {
    secret: authSecret(),
    session: { strategy: 'jwt', maxAge: SESSION_S },
    pages: { signIn: '/sign-in', error: FAILED },
    cookies: {
      sessionToken: session,
      callbackUrl: cookie(BACK_COOKIE),
      csrfToken: cookie('putlog-csrf'),
      state: cookie('putlog-state', 900),
      nonce: cookie('putlog-nonce', 900),
      pkceCodeVerifier: cookie('putlog-pkce', 900),
    },
    providers: [
      {
        id: 'oidc',
        name: oidc.name,
        type: 'oauth',
        wellKnown: `${oidc.issuer.replace(/\/$/, '')}/.well-known/openid-configuration`,
        clientId: oidc.clientId,
        clientSecret: oidc.clientSecret,
        authorization: { params: { scope: 'openid email profile' } },
        checks: ['pkce', 'state', 'nonce'],
        idToken: true,
        profile: (claims: Record<string, unknown>) => ({ id: String(claims.sub) }),
      },
    ],
    callbacks: {
      // The session is made here, so that the token needs to hold nothing but its random id.
      signIn: async ({ user, profile }) => {
        const outcome = await signInFromService(personOf(oidc, profile), from)
        if ('refused' in outcome) return `/sign-in?problem=${outcome.refused}`
        sids.set(user, outcome.sid)
        return true
      },
      jwt: ({ user }) => ({ sid: sids.get(user) }),
      redirect: ({ url, baseUrl }) => (url.startsWith(`${baseUrl}/`) ? url : `${baseUrl}/account`),
    },
    logger: {
      error: (code) => console.error(`Signing in through ${oidc.name} failed: ${code}`),
      warn() {},
      debug() {},
    },
  }
}

/** The session made for a sign-in, until its token is. */
const sids = new WeakMap<object, string>()

function personOf(oidc: OidcSettings, claims: unknown): ServicePerson {
  const { sub, email, email_verified, name } = claims as Record<string, unknown>
  return {
    issuer: oidc.issuer,
    subject: String(sub),
    email: typeof email === 'string' ? email.trim().toLowerCase() : null,
    confirmed: email_verified === true,
    name: typeof name === 'string' ? name : '',
  }
}

interface Call {
  readonly method: 'GET' | 'POST'
  readonly path: readonly string[]
  readonly query: Readonly<Record<string, string>>
  readonly body?: Readonly<Record<string, string>>
}

/** One call of next-auth, as the API route that it takes itself to be; what it answers is caught. */
async function call(oidc: OidcSettings, asked: Asked, { method, path, query, body = {} }: Call) {
  setAuthAddress(readSettings().siteUrl)
  const answer: { location?: string; cookies: string[]; body?: unknown } = { cookies: [] }
  const request = { method, query: { ...query, nextauth: path }, body, cookies: asked.cookies, headers: {} }
  const response = {
    status: () => response,
    getHeader: (name: string) => (/^set-cookie$/i.test(name) ? answer.cookies : undefined),
    setHeader: (name: string, value: string | string[]) => {
      if (/^set-cookie$/i.test(name)) answer.cookies = [value].flat()
      if (/^location$/i.test(name)) answer.location = String(value)
      return response
    },
    json: (value: unknown) => {
      answer.body = value
    },
    send: (value: unknown) => {
      answer.body = value
    },
    end: () => {},
  }
  await NextAuth(request as never, response as never, optionsFor(oidc, asked))
  return answer
}

/** `name=value; …` headers as cookies by name. */
const pairs = (headers: readonly string[]): Record<string, string> =>
  Object.fromEntries(
    headers.map((header) => {
      const [pair = ''] = header.split(';')
      const at = pair.indexOf('=')
      return [pair.slice(0, at), decodeURIComponent(pair.slice(at + 1))]
    }),
  )
