import { describe, expect, it } from 'vitest'
import { content } from '#lib/content/index.ts'
import type { Typed } from '../../app/_http/form.ts'
import { changesSince } from '../../app/_ui/changes-since.ts'
import { askedSystem, SYSTEMS } from '../../app/_ui/systems.ts'
import type { FieldAsked } from '../../app/_ui/workshop/asked.ts'
import type { BenchData } from '../../app/_ui/workshop/brought.ts'
import { type AnyCalculation, FRAME_NAMES } from '../../app/_ui/workshop/calculation.ts'
import { benchData } from '../../app/_ui/workshop/data.ts'
import { asCsvFile, asJsonFile, downloadOf } from '../../app/_ui/workshop/download.ts'
import { figureText, namedFigures } from '../../app/_ui/workshop/figures.ts'
import { readForm } from '../../app/_ui/workshop/read.ts'
import { workOut } from '../../app/_ui/workshop/run.ts'
import { switchUnits } from '../../app/_ui/workshop/switch-units.ts'
import { addressOf, versionsOf } from '../../app/_ui/workshop/versions.ts'
import { CALCULATIONS } from '../../app/work-out/calculations.ts'

const EDITIONS = { edition: 'e1', sums: 1 }

/** Every item of the lists that lead to other fields: the forms that a page can have. */
function formsOf(calculation: AnyCalculation, data: BenchData): [name: string, typed: Typed][] {
  const leading = calculation
    .fields({}, data)
    .flatMap((field) => (field.kind === 'choice' && field.leads ? [field] : []))
  return [
    ['as it opens', {}],
    ...leading.flatMap(({ name, options }) =>
      ends(options.filter(({ value }) => value !== '')).map(({ value }): [string, Typed] => [
        `${name}=${value}`,
        { [name]: value, show: 'fields' },
      ]),
    ),
  ]
}

/** Of a long list, of materials say, its first and its last: what they lead to is the same. */
const ends = <T>(list: readonly T[]): readonly T[] =>
  list.length > 8 ? [list[0] as T, list.at(-1) as T] : list

const cases = Object.values(CALCULATIONS).flatMap(({ calculation }) => {
  const data = benchData(calculation)
  return formsOf(calculation, data).map(
    ([form, typed]) => [calculation.name, form, calculation as AnyCalculation, data, typed] as const,
  )
})

describe.each(cases)('/work-out/%s, %s', (_, __, calculation, data, typed) => {
  it('gives a result from its examples, in both unit systems the same figures', () => {
    const texts = SYSTEMS.map((units) => {
      const { shown, faults } = workOut(calculation, { ...typed, units }, data)
      expect(faults).toEqual([])
      return namedFigures(shown?.blocks ?? []).map((figure) => [figure.name, figureText(figure, units)])
    })
    expect(texts[0]?.length).toBeGreaterThan(0)
    expect(texts[1]?.map(([name]) => name)).toEqual(texts[0]?.map(([name]) => name))
  })

  it('names its fields for the address, each once, and none as the frame does', () => {
    const names = calculation.fields(typed, data).map(({ name }) => name)
    expect(new Set(names).size).toBe(names.length)
    const frame: readonly string[] = [...FRAME_NAMES, 'in']
    for (const name of names) {
      expect(name).toMatch(/^[a-z][a-z0-9]*(?:-[a-z0-9.]+)*$/)
      expect(frame).not.toContain(name)
    }
  })

  it('names every figure once and brings the citations of all that it cites', () => {
    const { shown, form } = workOut(calculation, typed, data)
    const names = namedFigures(shown?.blocks ?? []).map(({ name }) => name)
    expect(new Set(names).size).toBe(names.length)
    const cited = [
      ...(shown?.steps.flatMap(({ source }) => source ?? []) ?? []),
      ...(shown?.blocks.flatMap((block) =>
        block.kind === 'figures' ? block.figures.flatMap(({ source }) => source ?? []) : [],
      ) ?? []),
      ...(shown?.blocks.flatMap((block) =>
        block.kind === 'table'
          ? block.rows.flatMap(({ cells }) =>
              Object.values(cells).flatMap((cell) =>
                cell !== null && typeof cell === 'object' ? (cell.source ?? []) : [],
              ),
            )
          : [],
      ) ?? []),
      ...form.fields.flatMap(({ field }) =>
        field.kind === 'amount' && field.usual?.source !== undefined ? [field.usual.source] : [],
      ),
    ].map((source) => source.split(', ')[0] ?? source)
    for (const id of cited) expect(data.cites, id).toHaveProperty(id)
    for (const id of Object.keys(data.cites)) expect(content().sources.has(id)).toBe(true)
  })

  it('changes units and back without changing what was meant', () => {
    const before = workOut(calculation, typed, data)
    const us = switchUnits(calculation, before.form.typed, data, 'us')
    expect(us).toBeDefined()
    const after = workOut(calculation, us ?? {}, data)
    expect(after.faults).toEqual([])
    const back = workOut(calculation, switchUnits(calculation, us ?? {}, data, 'metric') ?? {}, data)
    for (const read of back.form.fields) {
      const first = before.form.fields.find(({ field }) => field.name === read.field.name)
      if (read.amount && first?.amount)
        expect(read.amount.typical).toBeCloseTo(first.amount.typical, precision(first.amount.typical))
    }
  })

  it('holds everything in its address: it gives the same figures, or says that they differ', () => {
    const { form, shown } = workOut(calculation, typed, data)
    const versions = versionsOf(EDITIONS, shown?.blocks ?? [])
    const query = new URL(addressOf('/x', form.typed, versions), 'http://x').searchParams
    const again = workOut(calculation, Object.fromEntries(query), data)
    expect(again.form.fresh).toBe(false)
    const now = versionsOf(EDITIONS, again.shown?.blocks ?? [])
    expect(now).toEqual(versions)
    expect(changesSince(Object.fromEntries(query), now)).toBeNull()
    expect(changesSince({ ...Object.fromEntries(query), is: 'other' }, now)?.figures).toBe('differs')
  })

  it('names the field that each fault stands at, with what was typed', () => {
    const { form } = workOut(calculation, typed, data)
    for (const { field } of form.fields.filter(({ field }) => field.kind === 'amount')) {
      const { shown, faults } = workOut(calculation, { ...form.typed, [field.name]: 'mud' }, data)
      expect(shown).toBeUndefined()
      const found = faults.find(({ name }) => name === field.name)
      expect(found?.sentence).toContain('mud')
      expect(found?.sentence.startsWith(field.label)).toBe(true)
    }
  })

  it('survives any figure in any field: a result, or faults with words', () => {
    const { form } = workOut(calculation, typed, data)
    for (const { field } of form.fields.filter(({ field }) => field.kind === 'amount'))
      for (const text of ['0', '-1', '999999999']) {
        const { shown, faults } = workOut(calculation, { ...form.typed, [field.name]: text }, data)
        expect(shown === undefined, `${field.name}=${text}`).toBe(faults.length > 0)
      }
  })

  it('goes into a file with inputs, figures and versions', () => {
    const { form } = workOut(calculation, typed, data)
    const made = downloadOf(calculation, new URLSearchParams({ ...form.typed }))
    if (!made.ok) throw new Error('the examples give no file')
    const csv = asCsvFile(made)
    expect(csv.split('\r\n')[0]).toBe('part,name,label,low,typical,high,unit,words')
    expect(csv).toContain('made-from,sums')
    expect(JSON.parse(JSON.stringify(asJsonFile(calculation, made))).lines.length).toBe(made.lines.length)
  })
})

const precision = (value: number) => Math.max(0, 2 - Math.floor(Math.log10(Math.abs(value) + 1e-9)))

describe('readForm(calculation, sent, data)', () => {
  const data: BenchData = { materials: {}, cites: {}, terms: {} }
  const asking = (...fields: FieldAsked[]): AnyCalculation => ({
    name: 'trial',
    fields: () => fields,
    work: () => ({ ok: true, value: null }),
    show: () => ({ blocks: [], steps: [] }),
  })
  const length: FieldAsked = { kind: 'amount', name: 'length', label: 'Length', unit: 'mm', example: 100 }

  it('types examples in advance on the first visit alone', () => {
    const page = asking(length)
    expect(readForm(page, {}, data)).toMatchObject({ fresh: true, typed: { length: '100' }, faults: [] })
    expect(readForm(page, { units: 'us' }, data).typed.length).toBe('3.94')
    expect(readForm(page, { in: 'metric', units: 'metric' }, data).faults).toEqual([
      { field: 'length', code: 'required' },
    ])
  })

  it('takes what is usual where nothing is typed, and leaves out what is optional', () => {
    const page = asking(
      { ...length, name: 'depth', usual: { low: 5, typical: 10, high: 15, basis: 'practice' } },
      { kind: 'amount', name: 'width', label: 'Width', unit: 'mm', optional: true },
    )
    const { given, faults } = readForm(page, { other: '1' }, data)
    expect(faults).toEqual([])
    expect(given.need('depth').typical).toBe(10)
    expect(given.amount('width')).toBeUndefined()
  })

  it('asks which of two figures is meant, and takes the answer', () => {
    const page = asking(length)
    expect(readForm(page, { length: '1,500' }, data).faults[0]?.code).toBe('ambiguous-number')
    const { given } = readForm(page, { length: '1,500', 'length-mark': 'decimal' }, data)
    expect(given.need('length').typical).toBe(1.5)
  })

  it('reads figures in the reader’s unit', () => {
    const { given } = readForm(asking(length), { length: '2', units: 'us' }, data)
    expect(given.need('length').typical).toBeCloseTo(50.8, 9)
  })

  it('keeps a figure of the bench metric', () => {
    const { given } = readForm(asking({ ...length, bench: true }), { length: '2', units: 'us' }, data)
    expect(given.need('length').typical).toBe(2)
  })

  it('refuses a range where one number is asked, and what is outside its limits, in the unit asked', () => {
    const page = asking({ ...length, single: true, limits: { max: 254 } })
    expect(readForm(page, { length: '2-3' }, data).faults[0]?.code).toBe('one-number')
    expect(workOut(page, { length: '300', units: 'us' }, data).faults).toEqual([
      { name: 'length', sentence: 'Length: 300 is too large. Give 10 in or less.' },
    ])
  })

  it('takes no choice for another', () => {
    const page = asking({
      kind: 'choice',
      name: 'wood',
      label: 'Wood',
      first: 'oak',
      options: [{ value: 'oak', label: 'Oak' }],
    })
    expect(readForm(page, { wood: 'cake' }, data).faults[0]).toEqual({
      field: 'wood',
      code: 'unknown',
      value: 'cake',
    })
    expect(readForm(page, {}, data).given.chosen('wood')).toBe('oak')
  })

  it('reads figures in a row, with gaps where there may be some', () => {
    const row: FieldAsked = {
      kind: 'list',
      name: 'lows',
      label: 'Lows',
      unit: 'C',
      example: [1, -2],
      gaps: true,
      most: 4,
    }
    const read = (text: string, more: Typed = {}) => readForm(asking(row), { lows: text, ...more }, data)
    expect(read('1 -2\n– 3,5').given.list('lows')).toEqual([1, -2, null, 3.5])
    expect(read('50', { units: 'us' }).given.list('lows')[0]).toBeCloseTo(10, 9)
    expect(read('1 2 3 4 5').faults[0]).toMatchObject({ code: 'too-long', limit: 4 })
    expect(read('1,500').faults[0]?.code).toBe('ambiguous-in-list')
    expect(read('wet').faults[0]).toMatchObject({ code: 'not-a-number', value: 'wet' })
  })
})

describe('switchUnits(calculation, typed, data, to)', () => {
  const data: BenchData = { materials: {}, cites: {}, terms: {} }
  const page: AnyCalculation = {
    name: 'trial',
    fields: () => [{ kind: 'amount', name: 'length', label: 'Length', unit: 'mm' }],
    work: () => ({ ok: true, value: null }),
    show: () => ({ blocks: [], steps: [] }),
  }

  it('converts what was typed, ranges too', () => {
    expect(switchUnits(page, { length: '25.4–50.8', units: 'metric' }, data, 'us')).toEqual({
      length: '1–2',
      units: 'us',
    })
  })

  it('changes nothing while a figure cannot be read', () => {
    expect(switchUnits(page, { length: 'mud' }, data, 'us')).toBeUndefined()
  })

  it('is asked for by a form that wants other units than it was written in', () => {
    expect(askedSystem({ units: 'metric', in: 'us' })).toBe('us')
    expect(askedSystem({ units: 'us', in: 'us' })).toBeUndefined()
    expect(askedSystem({ in: 'metric' })).toBeUndefined()
  })
})
