import { describe, expect, test } from 'vitest'
import { checkCertificate } from '#lib/mortar/certificate.ts'
import { DECLARED_LIMITS, LIME_CLASSES, SINGLE_RESULT_LIMITS } from '#lib/mortar/certificate-limits.ts'
import { classifyLime } from '#lib/mortar/chemistry.ts'
import { HYDRAULIC_SCHEMES } from '#lib/mortar/chemistry-schemes.ts'
import { burnStone } from '#lib/mortar/chemistry-stone.ts'
import { exactly } from '#lib/mortar/range.ts'
import { value } from './check.ts'

const oxides = (sio2: number, al2o3: number, fe2o3: number, cao: number, mgo: number) => ({
  sio2: exactly(sio2),
  al2o3: exactly(al2o3),
  fe2o3: exactly(fe2o3),
  cao: exactly(cao),
  mgo: exactly(mgo),
})
const HYDRAULIC = oxides(20, 5, 2, 65, 1.5)
const faultsOf = (input: Parameters<typeof classifyLime>[0]) => {
  const outcome = classifyLime(input)
  return outcome.ok ? [] : outcome.faults.map(({ field, code }) => `${field} ${code}`)
}

describe('classifyLime(input)', () => {
  const found = value(classifyLime(HYDRAULIC))
  const classOf = (scheme: string) => found.classes.find((entry) => entry.scheme === scheme)

  test('gives the three indices of a hydraulic lime', () => {
    expect(found.candlotIndex.typical).toBeCloseTo(0.385, 3)
    expect(found.fullIndex.typical).toBeCloseTo(0.406, 3)
    expect(found.cementationIndex.typical).toBeCloseTo(0.937, 3)
  })

  test('shows every scheme it can, with its basis, even where they disagree', () => {
    expect(classOf('candlot-index')?.typical).toBe('properly')
    expect(classOf('cementation')?.typical).toBe('eminently')
    expect(classOf('cementation')?.basis).toBe('memory')
    expect(classOf('candlot-clay')).toBeUndefined()
    expect(value(classifyLime({ ...HYDRAULIC, clayInStone: exactly(17) })).classes).toHaveLength(
      HYDRAULIC_SCHEMES.length,
    )
  })

  test('names every class that the range touches, and none in a gap of the scheme', () => {
    const wide = value(classifyLime({ ...HYDRAULIC, sio2: { low: 10, typical: 20, high: 24 } }))
    expect(wide.classes.find(({ scheme }) => scheme === 'candlot-index')?.classes).toEqual([
      'moderately',
      'properly',
      'eminently',
    ])
    const gap = value(classifyLime({ ...HYDRAULIC, clayInStone: exactly(13) }))
    expect(gap.classes.find(({ scheme }) => scheme === 'notes-clay')?.typical).toBeNull()
  })

  test('bounds the free lime by nothing combined and all of it combined', () => {
    expect(found.freeCaO.high).toBe(65)
    expect(found.freeCaO.low).toBeCloseTo(65 - 20 * 1.8666 - 5 * 1.1 - 2 * 0.7023, 2)
    expect(found.freeHydrate.high).toBeCloseTo(65 * 1.32125, 3)
  })

  test('takes from the free lime what carbon and sulfur hold', () => {
    const carbonated = value(
      classifyLime({ ...oxides(1, 0.5, 0.2, 70, 1), co2: exactly(5), so3: exactly(1) }),
    )
    expect(carbonated.freeCaO.high).toBeCloseTo(70 - 5 * 1.27422 - 0.70046, 3)
  })

  test('leaves a pure lime non-hydraulic in every scheme', () => {
    const fat = value(classifyLime(oxides(0.5, 0.2, 0.1, 97, 1)))
    expect(fat.classes.flatMap(({ classes }) => classes)).toEqual(['not'])
  })

  test('refuses shares that are no shares, no lime, and more than the whole', () => {
    expect(faultsOf({ ...HYDRAULIC, sio2: exactly(-1), cao: exactly(0) })).toEqual([
      'sio2 negative',
      'cao not-positive',
    ])
    expect(faultsOf(oxides(40, 20, 2, 65, 1))).toEqual(['cao inconsistent'])
    expect(faultsOf({ ...HYDRAULIC, mgo: exactly(Number.NaN) })).toEqual(['mgo not-a-number'])
  })
})

describe('burnStone(clay)', () => {
  test('makes a fat lime of a pure stone and refuses a stone of clay', () => {
    expect(value(burnStone(exactly(0))).candlotIndex).toEqual(exactly(0))
    expect(burnStone(exactly(100)).ok).toBe(false)
  })
})

describe('checkCertificate(input)', () => {
  const row = (found: ReturnType<typeof checkCertificate>, item: string, kind = 'single-result') =>
    value(found).find((entry) => entry.item === item && entry.kind === kind)

  test('judges each item by the single-result limit and shows the remembered one beside it', () => {
    const found = checkCertificate({ class: 'CL 90', results: { caoMgo: 88, co2: 7 } })
    expect(row(found, 'caoMgo')?.outcome).toBe('meets')
    expect(row(found, 'caoMgo', 'declared')?.outcome).toBe('not-verified')
    expect(row(found, 'caoMgo', 'declared')?.basis).toBe('memory')
    expect(row(found, 'co2')?.outcome).toBe('breaks')
    expect(row(found, 'availableLime')?.outcome).toBe('not-given')
  })

  test('lets a disputed limit judge nothing', () => {
    const found = checkCertificate({ class: 'NHL 2', results: { availableLime: 36 } })
    expect(row(found, 'availableLime')?.outcome).toBe('not-verified')
    expect(row(found, 'availableLime')?.unsure).toBe('disputed')
  })

  test('judges reactivity and size of a quicklime by their own classes', () => {
    const found = checkCertificate({
      class: 'CL 90',
      reactivityClass: 'R5',
      sizeClass: 'P1',
      results: { reactivity: 13, passing2mm: 99, passing200um: 93.9 },
    })
    expect(row(found, 'reactivity')?.outcome).toBe('breaks')
    expect(row(found, 'passing2mm')?.outcome).toBe('meets')
    expect(row(found, 'passing200um')?.outcome).toBe('breaks')
    expect(row(found, 'passing90um')?.outcome).toBe('not-given')
    expect(
      row(checkCertificate({ class: 'CL 90', results: { reactivity: 13 } }), 'reactivity'),
    ).toBeUndefined()
  })

  test('refuses a reactivity class that the table does not list for the lime', () => {
    const outcome = checkCertificate({ class: 'CL 70', reactivityClass: 'R5', results: { co2: 1 } })
    expect(outcome.ok ? [] : outcome.faults.map(({ field, code }) => [field, code])).toEqual([
      ['reactivityClass', 'inconsistent'],
    ])
  })

  test.each(LIME_CLASSES)(
    'has single-result limits of %s, and remembers declared ones only as such',
    (name) => {
      expect(Object.keys(SINGLE_RESULT_LIMITS[name]).length).toBeGreaterThan(2)
      for (const limit of Object.values(DECLARED_LIMITS[name] ?? {})) expect(limit.unsure).toBe('memory')
    },
  )

  test('refuses an unknown class, unknown items, no result and results that are none', () => {
    const faults = (input: Parameters<typeof checkCertificate>[0]) => {
      const outcome = checkCertificate(input)
      return outcome.ok ? [] : outcome.faults.map(({ field, code }) => `${field} ${code}`)
    }
    expect(faults({ class: 'CL 99' as 'CL 90', results: { co2: 1 } })).toEqual(['class unknown'])
    expect(faults({ class: 'CL 90', results: {} })).toEqual(['results empty'])
    expect(faults({ class: 'CL 90', results: { colour: 1 } as object })).toEqual(['results.colour unknown'])
    expect(faults({ class: 'CL 90', results: { co2: 101, so3: Number.NaN } })).toEqual([
      'results.co2 too-large',
      'results.so3 not-a-number',
    ])
  })
})
