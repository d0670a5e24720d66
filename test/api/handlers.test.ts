import { describe, expect, it, vi } from 'vitest'
import { z } from 'zod'
import { operation } from '#lib/api/operation.ts'
import { problem } from '#lib/api/problem.ts'
import { Refusal } from '#lib/errors.ts'
import { handlers } from '../../app/_http/answer.ts'
import { problemOfThrown } from '../../app/_http/problem.ts'
import { MAX_BODY } from '../../app/_http/security.ts'

const reading = handlers(
  operation({
    id: 'read',
    method: 'GET',
    path: '/api/v1/walls/{slug}',
    summary: 'a wall',
    params: z.strictObject({ slug: z.string() }),
    query: z.strictObject({ years: z.coerce.number().int().min(1).default(5) }),
    answer: z.object({ slug: z.string(), years: z.number() }),
    async run({ params, query }) {
      if (params.slug === 'gone') throw new Refusal('not-found', 'No such wall.')
      if (params.slug === 'broken') throw new Error('secret: the disk at /dev/sda1')
      if (params.slug === 'away')
        throw Object.assign(new Error('connect'), { name: 'PrismaClientKnownRequestError' })
      return { slug: params.slug, years: query.years }
    },
  }),
)
const working = handlers(
  operation({
    id: 'work',
    method: 'POST',
    path: '/api/v1/double',
    summary: 'twice',
    body: z.strictObject({ litres: z.number().positive() }),
    answer: z.object({ litres: z.number() }),
    run: async ({ body }) => ({ litres: body.litres * 2 }),
  }),
)

const get = (slug: string, query = '', headers: Record<string, string> = {}) =>
  reading.GET(new Request(`http://site.test/api/v1/walls/${slug}${query}`, { headers }), {
    params: Promise.resolve({ slug }),
  })
const post = (body: BodyInit, type = 'application/json') =>
  working.POST(
    new Request('http://site.test/api/v1/double', {
      method: 'POST',
      body,
      headers: { 'content-type': type },
      duplex: 'half',
    } as RequestInit),
    { params: Promise.resolve({}) },
  )
const problemFrom = async (response: Response) => {
  expect(response.headers.get('content-type')).toBe('application/problem+json')
  const read = problem.parse(await response.json())
  expect(read.status).toBe(response.status)
  return read
}

/** The whole fault is in the log, and nothing else is. */
function expectLogged(words: string) {
  const log = vi.mocked(console.error)
  expect(log.mock.calls.map(([thrown]) => String(thrown))).toEqual([expect.stringContaining(words)])
  log.mockClear()
}

describe('handlers(operation)', () => {
  it('answers a read with JSON, a tag and leave for other sites to read it', async () => {
    const response = await get('north', '?years=3')
    expect(response.status).toBe(200)
    expect(await response.json()).toEqual({ slug: 'north', years: 3 })
    expect(response.headers.get('access-control-allow-origin')).toBe('*')
    expect(response.headers.get('cache-control')).toBe('public, max-age=60')
  })

  it('answers 304 to a tag that still holds and 200 to one that does not', async () => {
    const tag = (await get('north')).headers.get('etag') ?? ''
    expect((await get('north', '', { 'if-none-match': tag })).status).toBe(304)
    expect((await get('north', '?years=9', { 'if-none-match': tag })).status).toBe(200)
  })

  it('answers 422 naming each field of a query that cannot be used', async () => {
    const { errors } = await problemFrom(await get('north', '?years=0&colour=red'))
    expect(errors).toEqual([
      {
        field: 'years',
        code: 'too-small',
        value: '0',
        limit: 1,
        detail: 'years: 0 is too small. Give 1 or more.',
      },
      { field: 'colour', code: 'unknown-field', detail: 'colour: there is no such field here.' },
    ])
  })

  it('answers 404 with the words of a refusal', async () => {
    expect((await problemFrom(await get('gone'))).detail).toBe('No such wall.')
  })

  it('answers 500 to a fault of ours, and tells nothing of it', async () => {
    const response = await get('broken')
    expect(JSON.stringify(await problemFrom(response))).not.toContain('secret')
    expect(response.status).toBe(500)
    expectLogged('secret')
  })

  it('answers 503 with a time to come back when the database is away', async () => {
    const response = await get('away')
    expect(response.status).toBe(503)
    expect(response.headers.get('retry-after')).toBe('5')
    expectLogged('connect')
  })

  it('answers 405 with what is allowed to every other method', async () => {
    for (const method of ['POST', 'PUT', 'PATCH', 'DELETE'] as const) {
      const response = await reading[method](new Request('http://site.test/'), {
        params: Promise.resolve({}),
      })
      expect(response.status).toBe(405)
      expect(response.headers.get('allow')).toBe('GET, HEAD')
    }
    const response = await working.GET(new Request('http://site.test/'), { params: Promise.resolve({}) })
    expect(response.headers.get('allow')).toBe('POST')
  })

  it('computes from a JSON body, kept by no cache and read by no other site', async () => {
    const response = await post('{"litres": 21}')
    expect(await response.json()).toEqual({ litres: 42 })
    expect(response.headers.get('cache-control')).toBe('no-store')
    expect(response.headers.get('access-control-allow-origin')).toBeNull()
  })

  it.each([
    ['cut short', '{"litres": ', 'application/json', 400],
    ['empty', '', 'application/json', 400],
    ['not UTF-8', new Uint8Array([0x22, 0xff, 0x22]), 'application/json', 400],
    ['called text', '{"litres": 1}', 'text/plain', 415],
    ['called almost JSON', '{"litres": 1}', 'application/jsonp', 415],
    ['too large', `{"litres": ${' '.repeat(MAX_BODY)}1}`, 'application/json', 413],
    ['of a wrong value', '{"litres": -1}', 'application/json', 422],
    ['of a wrong kind', 'null', 'application/json', 422],
  ])('refuses a body that is %s', async (_, body, type, status) => {
    const response = await post(body, type)
    expect(response.status).toBe(status)
    await problemFrom(response)
  })

  it('takes a body of exactly the largest size, and stops reading a stream that passes it', async () => {
    const space = ' '.repeat(MAX_BODY - '{"litres": 1}'.length)
    expect((await post(`{"litres": ${space}1}`)).status).toBe(200)
    let pulled = 0
    const endless = new ReadableStream({
      pull(controller) {
        pulled += 1
        controller.enqueue(new Uint8Array(16 * 1024))
      },
    })
    expect((await post(endless)).status).toBe(413)
    expect(pulled).toBeLessThan(10)
  })
})

describe('problemOfThrown(thrown, labelOf)', () => {
  const empty = new Refusal('invalid', 'This file cannot be taken.', [
    { field: 'photo', code: 'photo-empty' },
  ])
  const sentence = (labelOf?: (field: string) => string) =>
    problemOfThrown(empty, labelOf).errors?.map(({ detail }) => detail)

  it('names fields by their path to programs, and as people call them where they read it', () => {
    const rest = ': this file is empty. Choose another, or take the photo again.'
    expect(sentence()).toEqual([`photo${rest}`])
    expect(sentence((field) => field.toUpperCase())).toEqual([`PHOTO${rest}`])
  })
})
