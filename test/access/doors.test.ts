import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { GUEST } from '#lib/access/actor.ts'
import { ACTIONS, mayPass, OPERATIONS, PAGES, ROUTES, ruleOfPath } from '#lib/access/doors.ts'
import { operations } from '#lib/api/operations.ts'

const app = new URL('../../app', import.meta.url).pathname
const files = readdirSync(app, { recursive: true, encoding: 'utf8' })
/** `cases/[slug]/page.tsx` → `/cases/[slug]`; folders in brackets group files and are no part of an address. */
const addressOf = (file: string) =>
  `/${file
    .split('/')
    .slice(0, -1)
    .filter((part) => !/^\(.*\)$/.test(part))
    .join('/')}`
const addresses = (name: RegExp) =>
  files
    .filter((file) => name.test(file))
    .map(addressOf)
    .sort()

/** Every function that a file of server actions gives out; a name stands for one action in the whole site. */
const actions = files
  .filter((file) => /\.tsx?$/.test(file))
  .map((file) => readFileSync(`${app}/${file}`, 'utf8'))
  .filter((text) => /^['"]use server['"]/m.test(text))
  .map((text) => ({ text, names: [...text.matchAll(/^export (?:const|async function|function) (\w+)/gm)] }))
const names = actions.flatMap(({ names }) => names.map(([, name = '']) => name))

describe('the tables of doors', () => {
  it('have a rule for every page and no page that is not there', () => {
    expect(addresses(/(^|\/)page\.tsx$/)).toEqual(Object.keys(PAGES).sort())
  })

  it('have a rule for every route handler', () => {
    expect(addresses(/(^|\/)route\.tsx?$/)).toEqual(Object.keys(ROUTES).sort())
  })

  it('have a rule for every server action, whose names differ', () => {
    expect([...names].sort()).toEqual(Object.keys(ACTIONS).sort())
  })

  it('are asked by every server action under its own name', () => {
    const unasked = actions.flatMap(({ text, names }) =>
      names
        .map(([, name = '']) => name)
        .filter((name) => !new RegExp(`\\('${name}'|ACTIONS\\.${name}\\b`).test(text)),
    )
    expect(unasked).toEqual([])
  })

  it('name only operations that there are; every other is open to anyone', () => {
    const ids = operations.map(({ id }) => id)
    expect(Object.keys(OPERATIONS).filter((id) => !ids.includes(id))).toEqual([])
  })

  it('hold no inline server action, which no table could name', () => {
    const inline = files
      .filter((file) => /\.tsx?$/.test(file))
      .filter((file) => /^\s+['"]use server['"]/m.test(readFileSync(`${app}/${file}`, 'utf8')))
    expect(inline).toEqual([])
  })
})

describe('ruleOfPath(path)', () => {
  it.each([
    ['/', 'anyone'],
    ['/account', 'member'],
    ['/cases/barn-wall', 'anyone'],
    ['/no-such-page', 'anyone'],
    ['/account/no-such-page', 'anyone'],
  ])('of %s is %s', (path, rule) => {
    expect(ruleOfPath(path)).toBe(rule)
  })
})

describe('mayPass(actor, rule)', () => {
  const member = (...roles: readonly string[]) => ({ kind: 'member', key: 'me', roles }) as never
  it('lets anyone, members and those with the right role through, and nobody of an unknown kind', () => {
    expect(mayPass(GUEST, 'anyone')).toBe(true)
    expect(mayPass(GUEST, 'member')).toBe(false)
    expect(mayPass(member(), 'member')).toBe(true)
    expect(mayPass(member('contributor'), 'nameRoles')).toBe(false)
    expect(mayPass(member('steward'), 'nameRoles')).toBe(true)
    expect(mayPass({ kind: 'ghost', key: 'me', roles: ['steward'] } as never, 'nameRoles')).toBe(false)
  })
})
