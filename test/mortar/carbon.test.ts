import { describe, expect, test } from 'vitest'
import { type CarbonInput, countCarbon } from '#lib/mortar/carbon.ts'
import { exactly } from '#lib/mortar/range.ts'
import { value } from './check.ts'

const BASE: CarbonInput = {
  mortarL: exactly(2000),
  limes: [
    {
      massKg: exactly(100),
      caoShare: exactly(0.9),
      mgoShare: exactly(0.02),
      fuelKgPerKg: exactly(0.3),
      distanceKm: exactly(100),
    },
  ],
  others: [{ massKg: exactly(1000), gateKgPerKg: exactly(0.005), distanceKm: exactly(50) }],
  transportKgPerTkm: exactly(0.1),
  uptakeShare: exactly(0.85),
  kMmPerRootDay: exactly(0.4),
  depthMm: exactly(20),
  years: [0, 1, 100],
}
const codes = (input: CarbonInput) => {
  const outcome = countCarbon(input)
  return outcome.ok ? [] : outcome.faults.map(({ field, code }) => `${field} ${code}`)
}

describe('countCarbon(input)', () => {
  const sheet = value(countCarbon(BASE))

  test('adds stone, fire, other materials and road, and names its method', () => {
    expect(sheet.calcination.typical).toBeCloseTo(90 * 0.78479 + 2 * 1.09193, 2)
    expect(sheet.fuel.typical).toBeCloseTo(30, 9)
    expect(sheet.others.typical).toBeCloseTo(5, 9)
    expect(sheet.transport.typical).toBeCloseTo((0.1 * 100 + 1 * 50) * 0.1, 9)
    const { calcination, fuel, others, transport } = sheet
    const parts = [calcination, fuel, others, transport].reduce((sum, part) => sum + part.typical, 0)
    expect(sheet.released.typical).toBeCloseTo(parts, 9)
    expect(sheet.perM3.typical).toBeCloseTo(parts / 2, 9)
    expect(sheet.method).toBe('calcination-by-stoichiometry')
  })

  test('takes nothing back at once, some after a year and never more than its share of the CaO', () => {
    const [start, year, century] = sheet.uptake.map(({ takenKg }) => takenKg.typical)
    expect(start).toBe(0)
    expect(year).toBeCloseTo((90 * 0.78479 * 0.85 * 0.4 * Math.sqrt(365.25)) / 20, 2)
    expect(century).toBeCloseTo(90 * 0.78479 * 0.85, 2)
    expect(sheet.inTheEnd.takenKg.typical).toBeCloseTo(century ?? 0, 9)
    expect(sheet.inTheEnd.leftKg.typical).toBeCloseTo(sheet.released.typical - (century ?? 0), 9)
    expect(sheet.uptake[2]?.leftKg.typical).toBeCloseTo(sheet.released.typical - (century ?? 0), 9)
  })

  test('doubles with the quantities', () => {
    const lime = BASE.limes[0]
    const doubled = value(
      countCarbon({
        ...BASE,
        others: [],
        limes: lime === undefined ? [] : [lime, lime],
        transportKgPerTkm: exactly(0),
      }),
    )
    expect(doubled.calcination.typical).toBeCloseTo(2 * sheet.calcination.typical, 9)
  })

  test('refuses no ingredient, shares over one and quantities below nothing', () => {
    const [lime] = BASE.limes
    expect(codes({ ...BASE, limes: [], others: [] })).toEqual(['limes empty'])
    expect(codes({ ...BASE, limes: lime ? [{ ...lime, mgoShare: exactly(0.2) }] : [] })).toEqual([
      'limes.0.mgoShare inconsistent',
    ])
    expect(codes({ ...BASE, mortarL: exactly(0), years: [-1] })).toEqual([
      'mortarL not-positive',
      'years.0 negative',
    ])
  })
})
