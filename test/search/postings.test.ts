import { describe, expect, it } from 'vitest'
import { db } from '#lib/db/client.ts'
import { packIds, unpackIds } from '#lib/db/search/posting.ts'
import { postingsOf } from '#lib/db/search/read.ts'
import { writePostings } from '#lib/db/search/write.ts'

describe('postingsOf(lexemes)', () => {
  it('gives back every id that was written, few or many to a block', async () => {
    const every = (step: number) => Array.from({ length: Math.ceil(65_536 / step) }, (_, n) => n * step)
    const written = [1, 2, 7, 255, 4099].map((step) => ({
      lexeme: `every ${step}`,
      block: 3,
      ids: every(step),
    }))
    await writePostings(
      db(),
      written.map((one) => ({ ...one, ids: packIds(one.ids) })),
    )
    const read = await postingsOf([...written.map(({ lexeme }) => lexeme), 'under nothing'])
    expect(read.length).toBe(written.length)
    for (const { lexeme, block, ids } of written) {
      const found = read.find((one) => one.lexeme === lexeme)
      expect(found?.block).toBe(block)
      expect(unpackIds(found?.ids ?? new Uint8Array())).toEqual(ids)
    }
  })
})
