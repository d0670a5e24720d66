import { NextRequest } from 'next/server'
import { afterEach, describe, expect, it, vi } from 'vitest'
import { problem } from '#lib/api/problem.ts'
import { withdrawnEntry } from '#lib/db/entries.ts'
import { ping } from '#lib/db/health.ts'
import { proxy } from '../../proxy.ts'

vi.mock('#lib/db/health.ts', () => ({ ping: vi.fn() }))
vi.mock('#lib/db/entries.ts', () => ({ withdrawnEntry: vi.fn() }))

const ask = (path: string, init: { method?: string; headers?: Record<string, string> } = {}) =>
  proxy(new NextRequest(`http://site.test${path}`, init))
/** How Next is told to go on to the page. */
const goesOn = (response: Response) => response.headers.get('x-middleware-next') === '1'

afterEach(() => {
  vi.mocked(ping).mockReset()
  vi.mocked(withdrawnEntry).mockReset()
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

  it.each(['/api/health', '/api/v1/openapi.json', '/api/v1/sums/slaking', '/icon.svg', '/robots.txt'])(
    'lets %s through without asking for the database',
    async (path) => {
      expect(goesOn(await ask(path))).toBe(true)
      expect(ping).not.toHaveBeenCalled()
    },
  )

  it.each([
    ['/recipes/old-lime', 'recipe'],
    ['/recipes/old-lime/job', 'recipe'],
    ['/cases/old-lime', 'case'],
  ] as const)('lets the page of a withdrawn entry at %s say why, with 410', async (path, kind) => {
    vi.mocked(withdrawnEntry).mockResolvedValue({ kind, title: '', at: new Date(0), words: '' })
    const response = await ask(path)
    expect(response.status).toBe(410)
    expect(goesOn(response)).toBe(true)
    expect(withdrawnEntry).toHaveBeenCalledWith('old-lime')
  })

  it('takes a withdrawn case for no reason to answer 410 at the address of a recipe', async () => {
    vi.mocked(withdrawnEntry).mockResolvedValue({ kind: 'case', title: '', at: new Date(0), words: '' })
    expect((await ask('/recipes/old-lime')).status).toBe(200)
  })

  it('takes a failing question about an entry for an absent database', async () => {
    vi.mocked(withdrawnEntry).mockRejectedValue(new Error('connection refused'))
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
