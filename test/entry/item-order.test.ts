import { describe, expect, it } from 'vitest'
import { inOrder, noteOrder } from '#lib/entry/item-order.ts'

const sha = (number: number) => `photos.${number}.sha256`

describe('noteOrder(before, after)', () => {
  it('puts behind one another what came in, and forgets what was taken out', () => {
    const one = noteOrder({}, { title: 'A visit', [sha(700)]: 'a', [sha(200)]: 'b' })
    expect(one).toMatchObject({ title: 'A visit', 'photos.order': '700 200' })
    const two = noteOrder(one, { ...one, [sha(300)]: 'c' })
    expect(two['photos.order']).toBe('700 200 300')
    const { [sha(700)]: _, ...without } = two
    const three = noteOrder(two, without)
    expect(three['photos.order']).toBe('200 300')
    // Put in again, it is the last.
    expect(noteOrder(three, { ...three, [sha(700)]: 'a' })['photos.order']).toBe('200 300 700')
    expect(noteOrder(one, { title: 'A visit' })).toEqual({ title: 'A visit' })
  })

  it('leaves alone what a version of the entry had, which is numbered in its order', () => {
    const printed = { [sha(0)]: 'a', [sha(1)]: 'b' }
    expect(noteOrder(printed, printed)).toEqual(printed)
    expect(noteOrder(printed, { ...printed, [sha(150)]: 'c' })['photos.order']).toBe('150')
  })
})

describe('inOrder(numbers, text, list)', () => {
  it('is the order in which they came, behind those that have none', () => {
    const text = { 'photos.order': '700 200 300' }
    expect(inOrder([200, 1, 300, 0, 700], text, 'photos')).toEqual([0, 1, 700, 200, 300])
    expect(inOrder([3, 1, 2], text, 'works')).toEqual([1, 2, 3])
  })
})
