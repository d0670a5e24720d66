import { describe, expect, it } from 'vitest'
import { content } from '#lib/content/index.ts'
import { exactly } from '#lib/mortar/range.ts'
import { analyseSample } from '#lib/mortar/sample.ts'
import type { Typed } from '../../app/_http/form.ts'
import type { BenchData, HeldRatio } from '../../app/_ui/workshop/brought.ts'
import { benchData } from '../../app/_ui/workshop/data.ts'
import { digestOf, namedFigures } from '../../app/_ui/workshop/figures.ts'
import { workOut } from '../../app/_ui/workshop/run.ts'
import { sample } from '../../app/work-out/sample/calculation.ts'

const data = benchData(sample)
const work = (typed: Typed, more: Partial<BenchData> = {}) =>
  workOut(sample, { show: 'fields', ...typed }, { ...data, ...more })
const figures = (typed: Typed) => {
  const { shown, faults } = work(typed)
  expect(faults).toEqual([])
  return Object.fromEntries(namedFigures(shown?.blocks ?? []).map(({ name, value }) => [name, value]))
}
const places = (typed: Typed) => work(typed).faults.map(({ name }) => name)

describe('/work-out/sample', () => {
  const properties = (id: string) => content().materials.get(id)?.properties ?? {}
  const weighed = {
    sampleG: 40,
    aggregateG: 28,
    finesG: 2,
    balanceG: 0.05,
    fines: 'clay',
    calcareousShare: exactly(0.02),
    otherSolubleShare: exactly(0.01),
    lime: properties('lime-fat'),
    aggregate: properties('earth-sandy'),
  } as const
  const typed = {
    'sample-g': '40',
    'aggregate-g': '28',
    'fines-g': '2',
    'balance-g': '0.05',
    fines: 'clay',
    calcareous: '2',
    other: '1',
    aggregate: 'earth-sandy',
  }

  it('hands shares typed in per cent to the sums, with the materials chosen', () => {
    const outcome = analyseSample({ ...weighed, carbonation: exactly(0.9) })
    if (!outcome.ok) throw new Error('the sums refuse the sample')
    const shown = figures({ ...typed, carbonation: '90' })
    for (const ratio of outcome.value.ratios) {
      expect(shown[`ratios.${ratio.state}.volume`]).toEqual(ratio.byVolume)
      expect(shown[`ratios.${ratio.state}.mass`]).toEqual(ratio.byMass)
    }
    expect(shown['sample.clay']).toEqual(outcome.value.clayPercent)
  })

  it('asks for the gas instead of the carbonation where it was measured', () => {
    const outcome = analyseSample({ ...weighed, carbonation: exactly(1), co2G: exactly(3) })
    if (!outcome.ok) throw new Error('the sums refuse the sample')
    const shown = figures({ ...typed, co2: 'measured', 'co2-g': '3' })
    expect(shown['sample.cao']).toEqual(outcome.value.caoG)
    expect(figures({ ...typed, co2: 'measured', 'co2-g': '3', carbonation: '20' })).toEqual(shown)
  })

  it('names the field of what cannot be', () => {
    expect(places({ ...typed, 'aggregate-g': '39' })).toEqual(['aggregate-g'])
    expect(places({ ...typed, calcareous: '60' })).toEqual(['calcareous'])
    expect(places({ ...typed, co2: 'measured', 'co2-g': '30' })).toEqual(['co2-g'])
    expect(places({ ...typed, 'lime-free-cao': '0' })).toEqual(['lime-free-cao'])
    expect(places({ ...typed, carbonation: '120' })).toEqual(['carbonation'])
  })

  it('says what acid cannot tell, and more of it for an earth mortar', () => {
    const doubts = (fines: string) =>
      work({ ...typed, fines }).shown?.blocks.flatMap((block) =>
        block.kind === 'table' && block.name === 'doubts' ? block.rows.map(({ name }) => name) : [],
      ) ?? []
    expect(doubts('clay')).toContain('earth-chalky-soil-or-lime')
    expect(doubts('aggregate')).not.toContain('earth-chalky-soil-or-lime')
  })

  it('links to what lies nearest, outside the figures’ digest', () => {
    const held = (id: string, typical: number, invented?: true): HeldRatio => ({
      id,
      label: id,
      href: `/${id}`,
      state: 'dry-hydrate',
      aggregatePerLime: exactly(typical),
      ...(invented && { invented }),
    })
    const alone = work(typed)
    const beside = work(typed, { held: [held('lean', 90), held('near', 2, true), held('rich', 0.01)] })
    expect(digestOf(beside.shown?.blocks ?? [])).toBe(digestOf(alone.shown?.blocks ?? []))
    const links = beside.shown?.blocks.flatMap((block) => (block.kind === 'links' ? block.links : [])) ?? []
    expect(links[0]).toMatchObject({ href: '/near', note: expect.stringMatching(/Invented\.$/) })
    expect(links.map(({ href }) => href)).toHaveLength(3)
    expect(links.find(({ href }) => href === '/lean')?.note).toContain('times leaner')
    expect(links.find(({ href }) => href === '/rich')?.note).toContain('times richer')
  })
})
