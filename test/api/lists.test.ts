import { parse } from 'csv-parse/sync'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Cell, csvLine } from '#lib/api/csv.ts'
import { asCsv, asJson, type ListRow } from '#lib/api/lists.ts'
import { answerStream } from '../../app/_http/stream.ts'

async function* batchesOf(...batches: ListRow[][]) {
  yield* batches
}
const gather = async (parts: AsyncIterable<string>) => {
  let all = ''
  for await (const part of parts) all += part
  return all
}

describe('csvLine(cells)', () => {
  it('quotes as RFC 4180 says in section 2, rules 5 to 7', () => {
    expect(csvLine(['aaa', 'b\r\nbb', 'ccc'])).toBe('aaa,"b\r\nbb",ccc\r\n')
    expect(csvLine(['aaa', 'b"bb', 'c,c'])).toBe('aaa,"b""bb","c,c"\r\n')
    expect(csvLine([null, true, -4.5, ['lime', 'sand']])).toBe(',true,-4.5,lime; sand\r\n')
  })

  // OWASP, "CSV Injection": cells that begin with one of = + - @, tab or carriage return.
  it.each(['=1+2', '+1', '-1', '@SUM(A1)', '\tx', '\rx', '=HYPERLINK("http://x","y")'])(
    'leaves no formula in %j',
    (text) => {
      const [[cell]] = parse(csvLine([text])) as [[string]]
      expect(cell).toBe(`'${text}`)
    },
  )

  it('is read back whole by another reader, whatever the text', () => {
    fc.assert(
      fc.property(fc.array(fc.string({ unit: 'grapheme' }), { minLength: 2, maxLength: 6 }), (cells) => {
        const [read] = parse(csvLine(cells)) as string[][]
        expect(read?.map((cell) => cell.replace(/^'(?=[=+\-@\t\r\n])/, ''))).toEqual(cells)
      }),
      { seed: 4180, numRuns: 300 },
    )
  })
})

const HEADS_OF_ROWS = ['slug', 'units', 'years']

describe('asCsv(heads, batches) and asJson(name, batches)', () => {
  const rows: ListRow[] = [
    { slug: 'a', units: ['granite', 'brick'], years: null },
    { slug: 'b', units: [], years: 3.5 },
    { slug: 'c', units: ['cob'], years: 0 },
  ]

  it('say the same, heads once, over however many batches', async () => {
    const csv = await gather(asCsv(HEADS_OF_ROWS, batchesOf(rows.slice(0, 2), [], rows.slice(2))))
    const read = parse(csv, { columns: true, bom: true })
    expect(read).toEqual([
      { slug: 'a', units: 'granite; brick', years: '' },
      { slug: 'b', units: '', years: '3.5' },
      { slug: 'c', units: 'cob', years: '0' },
    ])
    const json = await gather(asJson('cases', batchesOf(rows.slice(0, 2), [], rows.slice(2))))
    expect(JSON.parse(json)).toEqual({ cases: rows })
  })

  it('are sound when nothing is found', async () => {
    for (const nothing of [batchesOf(), batchesOf([])])
      expect(await gather(asCsv(HEADS_OF_ROWS, nothing))).toBe('\uFEFFslug,units,years\r\n')
    expect(JSON.parse(await gather(asJson('like', batchesOf([]))))).toEqual({ like: [] })
    expect(JSON.parse(await gather(asJson('like', batchesOf())))).toEqual({ like: [] })
  })
})

describe('answerStream(parts, headers)', () => {
  const cell: Cell = 'x'.repeat(1000)

  it('makes the next part only as it is read, and stops when nobody reads on', async () => {
    let made = 0
    let ended = false
    async function* endless() {
      try {
        for (;;) {
          made += 1
          yield csvLine([made, cell])
        }
      } finally {
        ended = true
      }
    }
    const answer = await answerStream(endless(), { 'Content-Type': 'text/csv' })
    const reader = answer.body?.getReader()
    for (let read = 0; read < 5; read += 1) await reader?.read()
    expect(made).toBeLessThanOrEqual(8)
    await reader?.cancel()
    expect(ended).toBe(true)
  })

  it('sends a list of 100,000 rows whole', async () => {
    async function* many() {
      for (let from = 0; from < 100_000; from += 500)
        yield Array.from({ length: 500 }, (_, n): ListRow => ({ n: from + n, text: 'sound, "as seen"' }))
    }
    const answer = await answerStream(asCsv(['n', 'text'], many()), {})
    const read = parse(await answer.text(), { columns: true, bom: true }) as { n: string; text: string }[]
    expect(read.length).toBe(100_000)
    expect(read.at(-1)).toEqual({ n: '99999', text: 'sound, "as seen"' })
  })

  it('throws what goes wrong before the first part, so that it can still be told', async () => {
    async function* broken(): AsyncGenerator<string> {
      yield* []
      throw new RangeError('no such unit')
    }
    await expect(answerStream(broken(), {})).rejects.toThrow('no such unit')
  })
})
