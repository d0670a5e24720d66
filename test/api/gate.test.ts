import { NextRequest } from 'next/server'
import { afterEach, describe, expect, it, vi } from 'vitest'
import { problem } from '#lib/api/problem.ts'
import { addressState } from '#lib/db/entries.ts'
import { ping } from '#lib/db/health.ts'
import { proxy } from '../../proxy.ts'

vi.mock('#lib/db/health.ts', () => ({ ping: vi.fn() }))
vi.mock('#lib/db/entries.ts', () => ({ addressState: vi.fn() }))

const ask = (path: string, init: { method?: string; headers?: Record<string, string> } = {}) =>
  proxy(new NextRequest(`http://site.test${path}`, init))
/** How Next is told to go on to the page. */
const goesOn = (response: Response) => response.headers.get('x-middleware-next') === '1'

afterEach(() => {
  vi.mocked(ping).mockReset()
  vi.mocked(addressState).mockReset()
})

describe('proxy(request)', () => {
  it('lets a page through with a policy that the page is told too', async () => {
    vi.mocked(ping).mockResolvedValue(true)
    const response = await ask('/tables')
    expect(goesOn(response)).toBe(true)
    expect(response.headers.get('content-security-policy')).toMatch(/script-src 'self' 'nonce-/)
    expect(response.headers.get('x-middleware-request-content-security-policy')).toBe(
      response.headers.get('content-security-policy'),
    )
  })

  it('answers 503 with a page that stands on nothing while the database is away', async () => {
    vi.mocked(ping).mockResolvedValue(false)
    const response = await ask('/tables')
    expect(response.status).toBe(503)
    expect(response.headers.get('retry-after')).toBe('5')
    expect(response.headers.get('cache-control')).toBe('no-store')
    const html = await response.text()
    expect(html).toContain('<meta http-equiv="refresh" content="5">')
    expect(html).not.toMatch(/<script|src=|<link/)
    const nonce = /<style nonce="([^"]+)"/.exec(html)?.[1]
    expect(response.headers.get('content-security-policy')).toContain(`'nonce-${nonce}'`)
  })

  it('answers 503 as problem details to the JSON interface', async () => {
    vi.mocked(ping).mockResolvedValue(false)
    const response = await ask('/api/v1/recipes')
    expect(response.headers.get('content-type')).toBe('application/problem+json')
    expect(problem.parse(await response.json()).status).toBe(503)
  })

  it.each([
    '/api/health',
    '/api/v1/openapi.json',
    '/api/v1/sums/slaking',
    '/icon.svg',
    '/icons/192.png',
    '/manifest.webmanifest',
    '/robots.txt',
    '/worker.js',
  ])('lets %s through without asking for the database', async (path) => {
    expect(goesOn(await ask(path))).toBe(true)
    expect(ping).not.toHaveBeenCalled()
  })

  it('tells who a page is for, and whether it may be kept', async () => {
    vi.mocked(ping).mockResolvedValue(true)
    const heads = async (path: string) => {
      const { headers } = await ask(path)
      return [headers.get('putlog-reader'), headers.get('putlog-keep')]
    }
    expect(await heads('/tables')).toEqual(['guest', 'page'])
    expect(await heads('/sign-in')).toEqual(['guest', null])
    expect(await heads('/kept')).toEqual(['guest', null])
  })

  it.each([
    ['/recipes/old-lime', 'recipe'],
    ['/recipes/old-lime/job', 'recipe'],
    ['/cases/old-lime', 'case'],
  ] as const)('lets the page of a withdrawn entry at %s say why, with 410', async (path, kind) => {
    vi.mocked(addressState).mockResolvedValue({ state: 'gone', latest: null })
    const response = await ask(path)
    expect(response.status).toBe(410)
    expect(goesOn(response)).toBe(true)
    expect(addressState).toHaveBeenCalledWith(kind, 'old-lime', undefined)
  })

  it.each([
    ['/recipes/no-such', 'recipe', 'no-such', undefined],
    ['/recipes/old-lime?revision=99', 'recipe', 'old-lime', 99],
    ['/recipes/old-lime?r=99', 'recipe', 'old-lime', undefined],
    ['/recipes/old-lime/job?r=99', 'recipe', 'old-lime', 99],
    ['/recipes/old-lime/job?r=none&revision=99', 'recipe', 'old-lime', undefined],
    ['/cases/no-such?revision=2', 'case', 'no-such', 2],
    ['/cases/No%20Such', 'case', 'No Such', undefined],
  ] as const)(
    'lets the page of an entry that is not there at %s say so, with 404',
    async (path, ...asked) => {
      vi.mocked(addressState).mockResolvedValue({ state: 'absent', latest: null })
      const response = await ask(path)
      expect(response.status).toBe(404)
      expect(goesOn(response)).toBe(true)
      expect(addressState).toHaveBeenCalledWith(...asked)
      expect(ping).not.toHaveBeenCalled()
    },
  )

  it.each(['/cases/%E0%A4%A', '/tables/%', '/%ff'])(
    'answers %s, which cannot be decoded, with the page that says that nothing is there',
    async (path) => {
      vi.mocked(addressState).mockResolvedValue({ state: 'absent', latest: null })
      vi.mocked(ping).mockResolvedValue(true)
      const response = await ask(path)
      expect(response.status).toBe(404)
      expect(response.headers.get('x-middleware-rewrite')).toBe('http://site.test/-')
      expect(response.headers.get('content-security-policy')).toMatch(/script-src 'self' 'nonce-/)
    },
  )

  it.each(['/tables', '/sources', '/materials', '/guides', '/terms'])(
    'lets a page that content does not hold under %s say so, with 404',
    async (folder) => {
      vi.mocked(ping).mockResolvedValue(true)
      vi.mocked(addressState).mockResolvedValue({ state: 'absent', latest: null })
      for (const id of ['no-such', 'README', 'no%20such']) {
        const response = await ask(`${folder}/${id}`)
        expect(response.status).toBe(404)
        expect(goesOn(response)).toBe(true)
      }
      expect((await ask(folder)).status).toBe(200)
    },
  )

  it.each([
    '/tables/vitruvius-mortar',
    '/sources/britannica-11-brickwork',
    '/materials/lime-fat',
    '/guides/quicklime-and-slaking',
    '/terms/units',
  ])('lets the page at %s through as one that is there', async (path) => {
    vi.mocked(ping).mockResolvedValue(true)
    expect((await ask(path)).status).toBe(200)
  })

  it('lets the page of an entry that stands through', async () => {
    vi.mocked(addressState).mockResolvedValue({ state: 'open', latest: 2 })
    expect((await ask('/recipes/old-lime?revision=1')).status).toBe(200)
  })

  it('takes a failing question about an entry for an absent database', async () => {
    vi.mocked(addressState).mockRejectedValue(new Error('connection refused'))
    expect((await ask('/recipes/old-lime')).status).toBe(503)
  })

  it('asks the database once for requests that arrive together', async () => {
    vi.mocked(ping).mockResolvedValue(true)
    await Promise.all([ask('/tables'), ask('/sources'), ask('/cases')])
    expect(ping).toHaveBeenCalledTimes(1)
    await ask('/tables')
    expect(ping).toHaveBeenCalledTimes(2)
  })

  it('bounds the address and the body before anything else', async () => {
    expect((await ask(`/tables?q=${'x'.repeat(6000)}`)).status).toBe(414)
    expect(
      (await ask('/api/v1/job', { method: 'POST', headers: { 'content-length': '65537' } })).status,
    ).toBe(413)
    expect(ping).not.toHaveBeenCalled()
  })

  it('promises https only to those who came by it', async () => {
    vi.mocked(ping).mockResolvedValue(true)
    const secure = await ask('/tables', { headers: { 'x-forwarded-proto': 'https' } })
    expect(secure.headers.get('strict-transport-security')).toBe('max-age=31536000')
    expect(secure.headers.get('content-security-policy')).toContain('upgrade-insecure-requests')
    expect((await ask('/tables')).headers.get('strict-transport-security')).toBeNull()
  })
})
