import { describe, expect, test } from 'vitest'
import { PROPERTY_UNITS } from '#lib/mortar/material.ts'
import { shownUnit, UNITS } from '#lib/mortar/units.ts'
import { quantityText, withUnit } from '../../app/_ui/quantity.tsx'
import { UNIT_WORDS } from '../../app/_ui/units.ts'

describe('quantityText(value, unit)', () => {
  test('prints the typical value with its unit, then the range', () => {
    expect(quantityText({ low: 11.04, typical: 12.53, high: 14.2 }, 'kg')).toEqual({
      main: '12.5 kg',
      range: '(11.0–14.2)',
    })
  })

  test('prints no range where there is none', () => {
    expect(quantityText({ low: 25, typical: 25, high: 25 }, 'kg')).toEqual({ main: '25 kg', range: null })
    expect(quantityText(4, 'd')).toEqual({ main: '4 d', range: null })
  })

  test('keeps the places that a counted or read figure was given with', () => {
    expect(quantityText(4.1, '%', 2)).toEqual({ main: '4.10 %', range: null })
  })
})

describe('withUnit(figure, unit)', () => {
  test.each(Object.values(PROPERTY_UNITS))('has a word for %s, which materials are measured in', (unit) => {
    expect(withUnit('7', unit)).toMatch(/^7/)
  })

  // Whatever a page prints is one of these: the sums know no other, and a page can print no other.
  test.each(
    [
      ...new Set([...Object.keys(UNITS), ...Object.keys(UNIT_WORDS), ...Object.values(PROPERTY_UNITS)]),
    ].flatMap((unit) => (['metric', 'us'] as const).map((system) => [unit, system] as const)),
  )('has a word for what %s is shown in where units are %s', (unit, system) => {
    for (const liquid of [true, false]) expect(withUnit('7', shownUnit(unit, system, liquid))).toMatch(/^7/)
  })

  test('refuses a unit that the catalogue does not know', () => {
    expect(() => withUnit('7', 'firkin')).toThrow(RangeError)
  })
})
