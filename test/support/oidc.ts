import { createServer } from 'node:http'
import Provider from 'oidc-provider'
import { freePort } from '#lib/db/embedded/server.ts'

/** What the provider tells of somebody, beside their subject. */
export interface Claims {
  readonly email?: string
  readonly email_verified?: boolean
  readonly name?: string
}

export const CLIENT = { id: 'putlog', secret: 'a secret that only these two know' }

/** A provider of OpenID Connect on this machine, which lets anybody in who says who they are. */
export async function startProvider(people: Readonly<Record<string, Claims>>, redirectUri: string) {
  const issuer = `http://127.0.0.1:${await freePort()}`
  const provider = new Provider(issuer, {
    clients: [
      {
        client_id: CLIENT.id,
        client_secret: CLIENT.secret,
        redirect_uris: [redirectUri],
        response_types: ['code'],
        grant_types: ['authorization_code'],
      },
    ],
    pkce: { required: () => true },
    claims: { email: ['email', 'email_verified'], profile: ['name'] },
    conformIdTokenClaims: false,
    cookies: { keys: ['only for tests'] },
    findAccount: (_ctx: unknown, id: string) => ({
      accountId: id,
      claims: async () => ({ sub: id, ...people[id] }),
    }),
  })
  const server = createServer(provider.callback())
  await new Promise<void>((resolve) => server.listen(Number(new URL(issuer).port), '127.0.0.1', resolve))
  return { issuer, stop: () => new Promise((resolve) => server.close(resolve)) }
}

/**
 * Goes through the provider as a browser would: says who one is, agrees, and stops where it is sent back.
 *
 * @returns the address that it is sent back to
 */
export async function goThrough(start: string, subject: string, back: string): Promise<URL> {
  const jar = new Map<string, string>()
  let address = new URL(start)
  let form: URLSearchParams | undefined
  for (let step = 0; step < 15; step += 1) {
    const answer = await fetch(address, {
      method: form === undefined ? 'GET' : 'POST',
      redirect: 'manual',
      headers: {
        cookie: [...jar].map(([name, value]) => `${name}=${value}`).join('; '),
        ...(form !== undefined && { 'content-type': 'application/x-www-form-urlencoded' }),
      },
      ...(form !== undefined && { body: form.toString() }),
    })
    for (const header of answer.headers.getSetCookie()) {
      const [name = '', value = ''] = (header.split(';')[0] ?? '').split(/=(.*)/s)
      jar.set(name, value)
    }
    form = undefined
    const location = answer.headers.get('location')
    if (location !== null) {
      address = new URL(location, address)
      if (address.href.startsWith(back)) return address
      continue
    }
    const page = await answer.text()
    const action = /<form[^>]*action="([^"]+)"/.exec(page)?.[1]
    if (action === undefined) throw new Error(`the provider said ${answer.status}: ${page.slice(0, 500)}`)
    address = new URL(action, address)
    form = new URLSearchParams({
      prompt: /name="prompt" value="(\w+)"/.exec(page)?.[1] ?? 'login',
      login: subject,
      password: 'x',
    })
  }
  throw new Error('the provider never sent the browser back')
}
