import { describe, expect, test } from 'vitest'
import { arrangeWorks } from '../../app/recipes/[slug]/job/works.ts'

const next = () => 'floor' as const
const arrange = (typed: Record<string, string>, most = 8) => arrangeWorks(typed, most, next)

describe('arrangeWorks', () => {
  test('takes an address of one work as it is', () => {
    const typed = { use: 'plaster', area: '10', coat1: '9', 'area-mark': 'decimal', 'pack-sand-2': '25' }
    expect(arrange(typed)).toEqual({ typed, count: 1, added: undefined })
  })

  test('adds a work and keeps all that was typed', () => {
    const { typed, count, added } = arrange({ use: 'plaster', area: 'wide', money: 'EUR', show: 'more' })
    expect(typed).toEqual({ use: 'plaster', area: 'wide', money: 'EUR', show: 'more', 'use-2': 'floor' })
    expect([count, added]).toEqual([2, 2])
  })

  test('moves what stands behind a work that is taken out, with its marks', () => {
    const sent = {
      use: 'plaster',
      area: '10',
      'use-2': 'floor',
      'area-2': '20',
      'use-3': 'pointing-rubble',
      'area-3': '1,500',
      'area-3-mark': 'decimal',
      'loss-3': '5',
      units: 'us',
    }
    expect(arrange({ ...sent, show: 'drop-2' })).toMatchObject({
      count: 2,
      typed: {
        use: 'plaster',
        area: '10',
        'use-2': 'pointing-rubble',
        'area-2': '1,500',
        'area-2-mark': 'decimal',
        'loss-2': '5',
        units: 'us',
        show: 'drop-2',
      },
    })
    expect(arrange({ ...sent, show: 'drop-1' }).typed).toMatchObject({ use: 'floor', area: '20' })
    expect(arrange({ ...sent, show: 'drop-1' }).typed).not.toHaveProperty('use-3')
  })

  test('never takes out the only work, and adds none above the most', () => {
    expect(arrange({ use: 'plaster', area: '10', show: 'drop-1' })).toMatchObject({
      count: 1,
      typed: { use: 'plaster', area: '10' },
    })
    expect(arrange({ use: 'plaster', 'use-2': 'floor', show: 'more' }, 2).count).toBe(2)
  })

  test('closes a gap in the numbers of an address, and leaves too many to be refused', () => {
    expect(arrange({ use: 'plaster', 'use-5': 'floor', 'area-5': '3' }).typed).toMatchObject({
      'use-2': 'floor',
      'area-2': '3',
    })
    const many = Object.fromEntries(Array.from({ length: 12 }, (_, k) => [`use-${k + 2}`, 'floor']))
    expect(arrange({ use: 'plaster', ...many }).count).toBe(13)
  })
})
