import { createHash } from 'node:crypto'
import { describe, expect, it } from 'vitest'
import { bodyTree, nodeAt } from '#lib/entry/tree.ts'
import { photoNumber } from '../../app/_write/photo-number.ts'
import { itemsOf } from '../../app/_write/read.ts'

const sha = (text: string) => createHash('sha256').update(text).digest('hex')

describe('photoNumber(sha256, taken)', () => {
  it('is the same for the same picture, whoever asks', () => {
    expect(photoNumber(sha('a wall'), new Set())).toBe(photoNumber(sha('a wall'), new Set([0, 1, 2])))
  })

  it('passes by what is taken, to the last number and round to the first', () => {
    const first = photoNumber(sha('a wall'), new Set())
    const next = photoNumber(sha('a wall'), new Set([first]))
    expect(next).toBe(first === 999 ? 100 : first + 1)
    const others = Array.from({ length: 900 }, (_, i) => 100 + i).filter((number) => number !== 777)
    expect(photoNumber(sha('a wall'), new Set(others))).toBe(777)
  })

  it('is a number that a form can hold', () => {
    for (let i = 0; i < 200; i += 1) {
      const field = `photos.${photoNumber(sha(`${i}`), new Set())}.sha256`
      expect(nodeAt(bodyTree('visit'), field)?.type).toBe('text')
      expect(itemsOf({ [field]: sha(`${i}`) }, 'photos')).toHaveLength(1)
    }
  })
})
