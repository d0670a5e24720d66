import { describe, expect, test } from 'vitest'
import {
  forgetFigures,
  keepFigures,
  keptFigures,
  unitsTyped,
} from '../../app/recipes/[slug]/job/kept-figures.ts'

function store(before?: string) {
  const held = new Map(before === undefined ? [] : [['putlog:own-figures', before]])
  return {
    getItem: (key: string) => held.get(key) ?? null,
    setItem: (key: string, value: string) => void held.set(key, value),
    removeItem: (key: string) => void held.delete(key),
  }
}

describe('figures kept in a browser', () => {
  test('are added to those of other materials, and forgotten all together', () => {
    const browser = store()
    expect(keepFigures(browser, { 'own-sand-voids': '35' }, 'metric')).toBe(true)
    keepFigures(browser, { 'pack-lime': '20' }, 'us')
    expect(keptFigures(browser)).toEqual({
      'own-sand-voids': { text: '35', units: 'metric' },
      'pack-lime': { text: '20', units: 'us' },
    })
    expect(forgetFigures(browser)).toBe(true)
    expect(keptFigures(browser)).toEqual({})
  })

  test('are of a language too, since a comma in one is a point in the other', () => {
    const browser = store()
    keepFigures(browser, { 'own-sand-bulk-density': '1.500' }, unitsTyped('metric', 'es'))
    expect(keptFigures(browser)['own-sand-bulk-density']?.units).not.toBe(unitsTyped('metric', 'en'))
    expect(unitsTyped('us', 'en')).toBe('us')
  })

  test('are nothing where the store holds something else, or refuses', () => {
    for (const strange of [
      '',
      '{',
      'null',
      '[]',
      '"x"',
      '{"a":1,"b":{"text":""},"c":{"text":"5","units":3}}',
    ])
      expect(keptFigures(store(strange))).toEqual({})
    const full = {
      ...store(),
      setItem: () => {
        throw new Error('full')
      },
    }
    expect(keepFigures(full, { a: '1' }, 'metric')).toBe(false)
  })
})
