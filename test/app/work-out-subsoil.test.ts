import { describe, expect, it } from 'vitest'
import { content } from '#lib/content/index.ts'
import { exactly } from '#lib/mortar/range.ts'
import { readJar } from '#lib/mortar/subsoil.ts'
import { amendSoil } from '#lib/mortar/subsoil-blend.ts'
import { limeOnSoil } from '#lib/mortar/subsoil-lime.ts'
import type { Typed } from '../../app/_http/form.ts'
import { benchData } from '../../app/_ui/workshop/data.ts'
import { namedFigures } from '../../app/_ui/workshop/figures.ts'
import { workOut } from '../../app/_ui/workshop/run.ts'
import { subsoil } from '../../app/work-out/subsoil/calculation.ts'

const data = benchData(subsoil)
const work = (typed: Typed) => workOut(subsoil, { show: 'fields', ...typed }, data)
const figures = (typed: Typed) => {
  const { shown, faults } = work(typed)
  expect(faults).toEqual([])
  return Object.fromEntries(namedFigures(shown?.blocks ?? []).map(({ name, value }) => [name, value]))
}
const places = (typed: Typed) => work(typed).faults.map(({ name }) => name)
const linkOf = (typed: Typed) =>
  work(typed).shown?.blocks.flatMap((block) =>
    block.kind === 'note' && block.link ? [block.link.href] : [],
  )[0]

describe('/work-out/subsoil', () => {
  it('reads a jar by volume, and by mass only where every layer was weighed', () => {
    const jar = { 'sand-mm': '50', 'silt-mm': '30', 'clay-mm': '20', 'mark-mm': '1' }
    const settled = { sand: exactly(1600), silt: exactly(1300), clay: exactly(700) }
    const outcome = readJar({ sandMm: 50, siltMm: 30, clayMm: 20, markMm: 1, settled })
    if (!outcome.ok) throw new Error('the sums refuse the jar')
    const typed = { 'settled-sand': '1600', 'settled-silt': '1300', 'settled-clay': '700' }
    expect(figures({ ...jar, ...typed })['mass.clay']).toEqual(outcome.value.byMass?.[2]?.percent)
    expect(figures(jar)).not.toHaveProperty('mass.clay')
    expect(places({ ...jar, 'settled-sand': '1600' })).toEqual(['settled-silt', 'settled-clay'])
  })

  it('leads on with the clay that was found, and that page works', () => {
    const jar = {
      'sand-mm': '30',
      'clay-mm': '50',
      'settled-sand': '1600',
      'settled-silt': '1300',
      'settled-clay': '700',
    }
    const href = linkOf(jar)
    expect(href).toBeDefined()
    const typed = Object.fromEntries(new URL(href ?? '', 'http://x').searchParams)
    const { form, faults } = workOut(subsoil, typed, data)
    expect(faults).toEqual([])
    const clay = form.fields.find(({ field }) => field.name === 'clay')?.amount
    expect(clay?.low).toBeGreaterThan(0)
    expect(clay?.high).toBeLessThan(50)
  })

  it('leads from fines to a hydrometer', () => {
    const typed = Object.fromEntries(new URL(linkOf({ what: 'wet-sieve' }) ?? '', 'http://x').searchParams)
    expect(typed).toMatchObject({ what: 'hydrometer' })
    expect(workOut(subsoil, typed, data).faults).toEqual([])
  })

  it('takes the rows of a hydrometer together, and names the one that is wrong', () => {
    const what = { what: 'hydrometer' }
    expect(places({ ...what, readings: '22 20 18' })).toEqual(['readings'])
    expect(places({ ...what, temperatures: '20 20' })).toEqual(['temperatures'])
    expect(places({ ...what, minutes: '1 2', readings: '20 21', temperatures: '20 20' })).toEqual([
      'readings',
    ])
    expect(places({ ...what, minutes: '2 1', readings: '20 19', temperatures: '20 20' })).toEqual(['minutes'])
    expect(places({ ...what, minutes: '1', readings: '20', temperatures: '20' })).toEqual(['minutes'])
    expect(places({ ...what, 'mass-g': '10' })).toEqual(['mass-g'])
  })

  it('does not part clay from silt before the silt has sunk', () => {
    const early = { what: 'hydrometer', minutes: '1 5 30', readings: '22 18 14', temperatures: '20 20 20' }
    expect(figures(early)['shares.clay']).toBeNull()
    expect(figures({ what: 'hydrometer' })['shares.clay']).not.toBeNull()
  })

  it('reads temperatures in the reader’s degrees', () => {
    const metric = figures({ what: 'hydrometer', temperatures: '20 20 20 20 20 20 20 20' })
    const us = figures({ what: 'hydrometer', units: 'us', temperatures: '68 68 68 68 68 68 68 68' })
    expect(us['points.after-60.size']).toEqual(metric['points.after-60.size'])
  })

  it('adds sand with its own density, and says where the target cannot be met', () => {
    const typed = { what: 'amend', clay: '30', 'addition-clay': '0', target: '15' }
    const outcome = amendSoil({
      clayPercent: exactly(30),
      additionClayPercent: exactly(0),
      targetClayPercent: 15,
      soilDensityKgM3: exactly(1200),
      additionDensityKgM3: exactly(1500),
    })
    if (!outcome.ok) throw new Error('the sums refuse the soil')
    const shown = figures({ ...typed, 'soil-density': '1200', 'addition-density': '1500' })
    expect(shown['addition.by-volume']).toEqual(outcome.value.perSoilByVolume)
    expect(work({ ...typed, target: '40' }).faults).toEqual([
      { name: 'target', sentence: expect.stringContaining('lie on one side of 40, so') },
    ])
  })

  it('reads bars in any order and finds the least addition', () => {
    const bars = { what: 'shrinkage', 'box-mm': '600', allowed: '2' }
    const shown = figures({ ...bars, additions: '2 0 1', gaps: '6 30 12' })
    expect(shown).toEqual(figures({ ...bars, additions: '0 1 2', gaps: '30 12 6' }))
    expect(shown['least.addition']).toBe(1)
    expect(figures({ ...bars, additions: '0 1', gaps: '30 20' })['least.addition']).toBeNull()
    expect(figures({ ...bars, allowed: '', additions: '0', gaps: '30' })).not.toHaveProperty('least.addition')
    expect(places({ ...bars, additions: '0 1 1', gaps: '3 2 1' })).toEqual(['additions'])
    expect(places({ ...bars, additions: '0 1', gaps: '3' })).toEqual(['gaps'])
    expect(places({ ...bars, additions: '0 1', gaps: '400 3' })).toEqual(['gaps'])
  })

  it('puts lime on soil with a figure of one’s own in place of the material’s', () => {
    const lime = content().materials.get('lime-fat')?.properties ?? {}
    const outcome = limeOnSoil({
      soilL: exactly(200),
      soilDensityKgM3: exactly(1200),
      percent: exactly(6),
      by: 'mass',
      state: 'putty',
      lime: { ...lime, puttyDensity: { ...exactly(1400), unit: 'kg/m3', basis: 'measured' } },
    })
    if (!outcome.ok) throw new Error('the sums refuse the lime')
    const shown = figures({
      what: 'lime',
      'soil-l': '200',
      'soil-density': '1200',
      dose: '6',
      by: 'mass',
      state: 'putty',
      'lime-putty-density': '1400',
    })
    for (const one of outcome.value.states) expect(shown[`states.${one.state}.volume`]).toEqual(one.volumeL)
  })
})
