import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { geoArea, geoContains, geoDistance } from 'd3-geo'
import fc from 'fast-check'
import { feature } from 'topojson-client'
import { describe, expect, it, test } from 'vitest'
import atlas from 'world-atlas/countries-50m.json'
import { type Cluster, marksOf } from '../../app/_ui/map/clusters.ts'
import { frameWorld, polygonsWith } from '../../app/_ui/map/frame.ts'
import type { Atlas } from '../../app/_ui/map/outlines.ts'
import { partsOf } from '../../app/_ui/map/outlines.ts'
import { pathOf } from '../../app/_ui/map/path.ts'
import { countrySheet, worldSheet } from '../../app/_ui/map/sheet.ts'

const finer: Atlas = JSON.parse(
  readFileSync(createRequire(import.meta.url).resolve('world-atlas/countries-10m.json'), 'utf8'),
)
const parts = partsOf(atlas)
const polygonsOf = (numeric: string) =>
  parts.filter(({ country }) => country === numeric).map(({ polygon }) => polygon)
const cluster = (id: string, count: number, latitude: number, longitude: number): Cluster => ({
  id,
  label: id,
  count,
  latitude,
  longitude,
  href: `/cases?region=${id}`,
})

describe('pathOf(lines, closed)', () => {
  it('tells each step from the one before, in whole units, without standing still', () => {
    const square = [
      [0.2, 0],
      [0.4, 0.1],
      [10, 0],
      [10, 10],
      [0, 10],
    ] as const
    expect(pathOf([square], true)).toBe('M0,0h10v10h-10z')
    expect(pathOf([[...square, [3, 7]]], false)).toBe('M0,0h10v10h-10l3,-3')
  })

  it('leaves out what shrinks to a point', () => {
    expect(
      pathOf(
        [
          [
            [1, 1],
            [1.2, 1.1],
            [0.9, 1],
          ],
        ],
        true,
      ),
    ).toBe('')
    expect(pathOf([[]], false)).toBe('')
  })
})

describe('outlines', () => {
  // The same package's outlines at 1:10 million, read without any of our own code.
  test.each(['233', '705', '620', '036'])(
    'the country %s is as large as finer outlines make it',
    (numeric) => {
      const area = polygonsOf(numeric).reduce((sum, polygon) => sum + geoArea(polygon), 0)
      const found = feature(finer, finer.objects.countries).features.find(({ id }) => id === numeric)
      expect(found && area / geoArea(found)).toBeCloseTo(1, 1)
    },
  )

  it('chooses the island that holds a place, and the mainland for none', () => {
    const australia = polygonsOf('036')
    const hobart = { latitude: -42.9, longitude: 147.3 }
    const [island, ...more] = polygonsWith(australia, [hobart])
    expect(more).toEqual([])
    expect(island && geoContains(island, [146.5, -42])).toBe(true)
    const [mainland] = polygonsWith(australia, [])
    expect(mainland && geoContains(mainland, [134, -25])).toBe(true)
  })

  it('takes a place that a coarse coast leaves in the sea to the nearest shore', () => {
    const estonia = polygonsOf('233')
    const [held] = polygonsWith(estonia, [{ latitude: 59.6, longitude: 25 }])
    expect(held && geoContains(held, [25.5, 58.8])).toBe(true)
  })
})

describe('countrySheet(alpha2, places)', () => {
  it.each(['EE', 'SI', 'PT', 'AU'])('frames %s and draws it', (country) => {
    const sheet = countrySheet(country, [])
    expect(sheet?.country).toMatch(/^M\d+,\d+[hvl]/)
    expect(sheet?.frame.width).toBeLessThanOrEqual(720)
    expect(sheet?.frame.height).toBeLessThanOrEqual(720)
  })

  it('gives nothing for a country that the outlines have not, or that there is not', () => {
    expect(countrySheet('XX', [])).toBeUndefined()
    expect(countrySheet('TV', [])).toBeUndefined()
  })

  it('keeps the bytes of a page few: the world is fetched once, a country is small', () => {
    const { land, borders } = worldSheet()
    expect(land.length + borders.length).toBeLessThan(40_000)
    for (const country of ['EE', 'SI', 'PT', 'AU']) {
      const sheet = countrySheet(country, [{ latitude: -42, longitude: 147 }])
      expect((sheet?.land.length ?? 0) + (sheet?.country?.length ?? 0)).toBeLessThan(12_000)
    }
  })
})

describe('marksOf(clusters, frame)', () => {
  const frame = frameWorld()

  it('puts a mark where its cases are, and its name beside it', () => {
    const [mark] = marksOf([cluster('Estonia', 12, 58.7, 25.5)], frame, 'world')
    const back = frame.projection.invert?.([mark?.x ?? 0, mark?.y ?? 0]) ?? [0, 0]
    expect(geoDistance(back, [25.5, 58.7]) * 6371).toBeLessThan(150)
    expect(mark?.name).toBeDefined()
  })

  it('grows by area with the count', () => {
    const [most, least] = marksOf([cluster('a', 400, 0, 0), cluster('b', 225, -20, 60)], frame)
    expect((least?.radius ?? 0) / (most?.radius ?? 1)).toBeCloseTo(0.75, 1)
  })

  it('keeps every mark in the frame, apart from the others, and no name on a mark or another name', () => {
    const places = fc.array(
      fc.record({
        count: fc.integer({ min: 1, max: 5000 }),
        latitude: fc.double({ min: 35, max: 60, noNaN: true }),
        longitude: fc.double({ min: -10, max: 30, noNaN: true }),
      }),
      { minLength: 1, maxLength: 9 },
    )
    fc.assert(
      fc.property(places, (list) => {
        const marks = marksOf(
          list.map(({ count, latitude, longitude }, n) => cluster(`place ${n}`, count, latitude, longitude)),
          frame,
          'world',
        )
        expect(marks.length).toBe(list.length)
        for (const { x, y, radius } of marks) {
          expect(Math.min(x, y)).toBeGreaterThanOrEqual(radius)
          expect(x + radius).toBeLessThanOrEqual(frame.width)
          expect(y + radius).toBeLessThanOrEqual(frame.height)
        }
        for (const { name } of marks)
          for (const { x, y } of marks)
            if (name) expect(Math.abs(name.x - x) + Math.abs(name.y - y)).toBeGreaterThan(10)
      }),
      { seed: 7, numRuns: 100 },
    )
  })
})
