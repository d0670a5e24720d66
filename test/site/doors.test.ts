import { readFileSync } from 'node:fs'
import { beforeAll, describe, expect, it } from 'vitest'
import { type Actor, GUEST, type Role } from '#lib/access/actor.ts'
import { ACTIONS, type DoorRule, mayPass, OPERATIONS, PAGES, ROUTES } from '#lib/access/doors.ts'
import { operations } from '#lib/api/operations.ts'
import { joinSite, makePerson, signIn } from '../support/people.ts'
import { SITE } from './pages.ts'

/** Everybody who may come to a door. */
const ROLES: Readonly<Record<string, readonly Role[] | null>> = {
  guest: null,
  reader: [],
  contributor: ['contributor'],
  reviewer: ['reviewer'],
  steward: ['steward'],
}
type Who = keyof typeof ROLES & string
const EVERYBODY = Object.keys(ROLES)

const actorOf = (who: Who): Actor => {
  const roles = ROLES[who]
  return roles ? { kind: 'member', key: who, roles } : GUEST
}
/** Whether the table lets them in. */
const allowed = (who: Who, rule: DoorRule) => mayPass(actorOf(who), rule)

const cookies = new Map<Who, Record<string, string>>()
beforeAll(async () => {
  joinSite()
  for (const who of EVERYBODY) cookies.set(who, await headersOf(who))
})

/** A new browser of such a person; a guest's carries nothing. */
async function headersOf(who: Who): Promise<Record<string, string>> {
  const roles = ROLES[who]
  return roles ? (await signIn(await makePerson({ roles }))).headers : {}
}

/** An address of a door: what stands for a part of it is something that there is none of. */
const addressOf = (door: string) =>
  door
    .replaceAll('[draft]', '01890000-0000-7000-8000-000000000001')
    .replaceAll('[sha]', 'a'.repeat(64))
    .replaceAll(/\[[^\]]+\]/g, 'no-such')

const ask = (who: Who, path: string, init: RequestInit = {}) =>
  fetch(SITE + path, { redirect: 'manual', ...init, headers: { ...cookies.get(who), ...init.headers } })

/** What became of somebody at a page. */
async function atPage(who: Who, path: string): Promise<'in' | 'refused' | 'sent to sign in'> {
  const answer = await ask(who, path)
  await answer.body?.cancel()
  if (answer.status === 403) return 'refused'
  const away = answer.headers.get('location')?.startsWith('/sign-in?to=') === true
  return away && answer.status === 303 ? 'sent to sign in' : 'in'
}

describe('every page lets in whom the table names', () => {
  it.each(Object.entries(PAGES))('%s: %s', async (door, rule) => {
    const found = await Promise.all(EVERYBODY.map(async (who) => [who, await atPage(who, addressOf(door))]))
    const wanted = EVERYBODY.map((who) => [
      who,
      allowed(who, rule) ? 'in' : who === 'guest' ? 'sent to sign in' : 'refused',
    ])
    expect(found).toEqual(wanted)
  })
})

describe('every route answers whom the table names', () => {
  const METHODS = ['GET', 'POST', 'PATCH', 'DELETE']

  it.each(Object.entries(ROUTES))('%s: %s', async (door, rule) => {
    const found: (readonly [string, boolean])[] = []
    for (const who of EVERYBODY) {
      const answers = await Promise.all(METHODS.map((method) => ask(who, addressOf(door), { method })))
      await Promise.all(answers.map((answer) => answer.body?.cancel()))
      const offered = answers.map(({ status }) => status).filter((status) => status !== 405)
      expect(offered.length, `${door} offers a method`).toBeGreaterThan(0)
      found.push([who, offered.every((status) => status !== 401 && status !== 403)])
    }
    expect(found).toEqual(EVERYBODY.map((who) => [who, allowed(who, rule)]))
  })
})

describe('every operation of the JSON interface answers whom the table names', () => {
  it.each(operations.map(({ id, method, path }) => [id, method, path] as const))(
    '%s',
    async (id, method, path) => {
      const rule = OPERATIONS[id] ?? 'anyone'
      const address = path.replaceAll(/\{[^}]+\}/g, 'no-such')
      const found = await Promise.all(
        EVERYBODY.map(async (who) => {
          const { status, body } = await ask(who, address, { method })
          await body?.cancel()
          return [who, status !== 401 && status !== 403]
        }),
      )
      expect(found).toEqual(EVERYBODY.map((who) => [who, allowed(who, rule)]))
    },
  )
})

interface Manifest {
  readonly node: Readonly<
    Record<string, { readonly workers: Readonly<Record<string, unknown>>; readonly exportedName?: string }>
  >
}

/** Server actions as the build knows them: name → id, and a page that runs it. */
function builtActions(): Map<string, { id: string; page: string }> {
  const manifest = JSON.parse(readFileSync('.next/server/server-reference-manifest.json', 'utf8')) as Manifest
  return new Map(
    Object.entries(manifest.node).flatMap(([id, { workers, exportedName }]) => {
      const [worker] = Object.keys(workers)
      if (exportedName === undefined || worker === undefined) return []
      const page = worker.replace(/^app/, '').replace(/\/page$/, '')
      return [[exportedName, { id, page: addressOf(page === '' ? '/' : page) }] as const]
    }),
  )
}

/** What an action takes: a form, after the state before it where a form shows what became of it. */
const CALLS = ['["$K1"]', '[{"typed":{},"errors":{},"turn":0},"$K1"]']

/** How each action turned out to be called, by its id. */
const known = new Map<string, string>()

/** Sends an action an empty form, as the browser's script does, and tells whether it was refused for who sent it. */
async function refuses(who: Who, { id, page }: { id: string; page: string }): Promise<boolean> {
  const first = known.get(id)
  for (const call of first === undefined ? CALLS : [first, ...CALLS.filter((one) => one !== first)]) {
    const body = new FormData()
    body.set('1_nothing', '')
    body.set('0', call)
    // Some end the session that sends them, so each comes from a new one.
    const headers = { ...(await headersOf(who)), 'next-action': id, origin: SITE }
    const answer = await fetch(SITE + page, { method: 'POST', body, headers, redirect: 'manual' })
    const text = await answer.text()
    // Called in the other way it breaks.
    if (answer.status >= 500) continue
    known.set(id, call)
    const away = /^\/sign-in/.test(answer.headers.get('x-action-redirect') ?? '')
    return away || /You are not signed in|Your account may not do this/.test(text)
  }
  throw new Error(`The action ${id} breaks however it is called`)
}

describe('every server action runs for whom the table names', () => {
  const built = builtActions()

  it('is known to the build', () => {
    expect(Object.keys(ACTIONS).filter((name) => !built.has(name))).toEqual([])
  })

  it.each(Object.entries(ACTIONS))('%s: %s', async (name, rule) => {
    const action = built.get(name)
    if (action === undefined) throw new Error(`no action ${name}`)
    const found: (readonly [string, boolean])[] = []
    for (const who of EVERYBODY) found.push([who, !(await refuses(who, action))])
    expect(found).toEqual(EVERYBODY.map((who) => [who, allowed(who, rule)]))
  })
})
