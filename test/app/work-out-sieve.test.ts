import { describe, expect, it } from 'vitest'
import { exactly } from '#lib/mortar/range.ts'
import { gradeSand } from '#lib/mortar/sieve.ts'
import { blendSands } from '#lib/mortar/sieve-blend.ts'
import { GRADING_LIMITS } from '#lib/mortar/sieve-gradings.ts'
import type { Typed } from '../../app/_http/form.ts'
import { benchData } from '../../app/_ui/workshop/data.ts'
import { namedFigures } from '../../app/_ui/workshop/figures.ts'
import { workOut } from '../../app/_ui/workshop/run.ts'
import type { Figure } from '../../app/_ui/workshop/shown.ts'
import { sieve } from '../../app/work-out/sieve/calculation.ts'
import { LIMITS } from '../../app/work-out/sieve/choices.ts'
import { openingsOf } from '../../app/work-out/sieve/stacks.ts'

const data = benchData(sieve)
const work = (typed: Typed) => workOut(sieve, { show: 'fields', ...typed }, data)
const figures = (typed: Typed): Record<string, Figure['value']> => {
  const { shown, faults } = work(typed)
  expect(faults).toEqual([])
  return Object.fromEntries(namedFigures(shown?.blocks ?? []).map(({ name, value }) => [name, value]))
}
const faultsOf = (typed: Typed) => work(typed).faults.map(({ name, sentence }) => [name, sentence])

describe('/work-out/sieve, one sand', () => {
  const openings = openingsOf('en')
  const masses = [0, 12, 58, 96, 128, 134, 52, 14]
  const typed = Object.fromEntries(openings.map((mm, i) => [`on-${mm}`, String(masses[i])]))

  it('hands every mass to its own sieve', () => {
    const outcome = gradeSand({
      sieves: openings.map((openingMm, i) => ({ openingMm, retainedG: masses[i] as number })),
      panG: 6,
      startG: 502,
      balanceG: 0.2,
    })
    if (!outcome.ok) throw new Error('the sums refuse the sand')
    const shown = figures({ ...typed, pan: '6', start: '502', balance: '0.2' })
    for (const row of outcome.value.rows)
      expect(shown[`sieves.at-${row.openingMm}.passing`]).toEqual(row.passing)
    expect(shown['grading.d50']).toEqual(outcome.value.d50.mm)
    expect(shown['weighed.loss']).toBe(0.4)
  })

  it('says beyond which sieve a size lies', () => {
    const coarse = Object.fromEntries(openings.map((mm) => [`on-${mm}`, '10']))
    const { shown } = work({ ...coarse, pan: '400' })
    const d10 = shown?.blocks.flatMap((block) =>
      block.kind === 'figures' ? block.figures.filter(({ name }) => name === 'd10') : [],
    )[0]
    expect(d10).toMatchObject({ value: null, note: 'Finer than 0.063 mm, the finest sieve.' })
  })

  it('takes a stack of one’s own in any order', () => {
    const down = figures({ stack: 'own', openings: '4 2 1 0.5', masses: '5 20 60 80', pan: '35' })
    const up = figures({ stack: 'own', openings: '0.5 1 2 4', masses: '80 60 20 5', pan: '35' })
    expect(up).toEqual(down)
    expect(down['sieves.at-1.passing']).toMatchObject({ typical: 57.5 })
  })

  it('refuses a sieve that stands twice and rows that do not go together, at their field', () => {
    expect(faultsOf({ stack: 'own', openings: '4 2 2', masses: '1 2 3' })).toEqual([
      ['openings', 'Openings: “2 mm” stands here twice.'],
    ])
    expect(faultsOf({ stack: 'own', openings: '4 2 1', masses: '1 2' })).toEqual([
      ['masses', 'Kept on each: too short or too few. Give at least 3.'],
    ])
    expect(faultsOf({ stack: 'own', openings: '4 2', masses: '0 0', pan: '0' })[0]?.[0]).toBe('masses')
  })

  it('knows every grading that the sums know', () => {
    expect([...LIMITS].sort()).toEqual(GRADING_LIMITS.map(({ id }) => id).sort())
    for (const limits of LIMITS)
      expect(Object.keys(figures({ limits })).some((name) => name.startsWith('held.at-'))).toBe(true)
    expect(Object.keys(figures({ limits: 'none' })).some((name) => name.startsWith('held.'))).toBe(false)
  })

  it('says where a sand breaks its limits', () => {
    const all = Object.fromEntries(openings.map((mm) => [`on-${mm}`, mm === 2 ? '400' : '1']))
    const says = work({ ...all, pan: '1' }).shown?.blocks.flatMap((block) =>
      block.kind === 'drawing' ? [block.says] : [],
    )[0]
    expect(says).toContain('It breaks ASTM C144, natural sand at')
  })
})

describe('/work-out/sieve, a blend', () => {
  const sands = ['0 40 160 150 90 40 14 4 2', '0 0 4 20 76 210 150 30 10']

  it('gives the sums’ shares for the middle of the limits', () => {
    const curves = sands.map((text) => {
      const masses = text.split(' ').map(Number)
      const outcome = gradeSand({
        sieves: openingsOf('en').map((openingMm, i) => ({ openingMm, retainedG: masses[i] as number })),
        panG: masses.at(-1) as number,
        balanceG: 0.1,
      })
      if (!outcome.ok) throw new Error('the sums refuse a sand')
      return outcome.value.rows
    })
    const limits = GRADING_LIMITS.find(({ id }) => id === 'bs-1200-general')
    const target = (limits?.passing ?? []).map(({ openingMm, low, high }) => ({
      openingMm,
      passing: (low + high) / 2,
    }))
    const outcome = blendSands({
      sands: [
        { curve: curves[0] ?? [], bulkDensityKgM3: exactly(1500) },
        { curve: curves[1] ?? [], bulkDensityKgM3: exactly(1400) },
      ],
      target,
    })
    if (!outcome.ok) throw new Error('the sums refuse the blend')
    const shown = figures({
      what: 'blend',
      target: 'bs-1200-general',
      'sand-1': sands[0] ?? '',
      'sand-2': sands[1] ?? '',
      'density-1': '1500',
      'density-2': '1400',
    })
    const share = outcome.value.volumeShares?.[0]
    expect(shown['sands.sand-1.volume']).toMatchObject({ typical: (share?.typical ?? 0) * 100 })
    expect(shown['fit.residual']).toEqual(outcome.value.residual)
  })

  it('leaves out what the stack says nothing of, and says so', () => {
    const { shown } = work({ what: 'blend', stack: 'astm', target: 'bs-1200-general' })
    const notes = shown?.blocks.flatMap((block) => (block.kind === 'note' ? [block.text] : []))
    expect(notes?.some((text) => text.endsWith('says nothing of it: 5 mm.'))).toBe(true)
  })

  it('asks for as many masses as sieves and one for the pan, at the sand that lacks some', () => {
    expect(faultsOf({ what: 'blend', 'sand-2': '1 2 3' })).toEqual([
      ['sand-2', 'Kept by sand 2: too short or too few. Give at least 9.'],
    ])
    expect(faultsOf({ what: 'blend', 'sand-1': '0 0 0 0 0 0 0 0 0' })[0]?.[0]).toBe('sand-1')
  })

  it('blends to a grading of one’s own, with gaps, and refuses one that rises', () => {
    const own = { what: 'blend', target: 'own' }
    expect(Object.keys(figures({ ...own, passing: '100 – 92 – 48 – 6 –' }))).toContain(
      'blend.at-0.125.passing',
    )
    expect(faultsOf({ ...own, passing: '100 90 95 70 40 20 6 2' })[0]?.[0]).toBe('passing')
    expect(faultsOf({ ...own, passing: '– – – – – – – –' })[0]?.[0]).toBe('passing')
  })

  it('shares two sands by their moduli, and says when no blend reaches the one wanted', () => {
    const two = { what: 'modulus', fine: '1.6', coarse: '3.2' }
    expect(figures({ ...two, wanted: '2.4' })['shares.finer']).toBe(50)
    const { shown } = work({ ...two, wanted: '4' })
    expect(shown?.blocks.some((block) => block.kind === 'notice' && block.tone === 'caution')).toBe(true)
    expect(faultsOf({ ...two, fine: '3.4' })[0]?.[0]).toBe('fine')
  })
})
