import { describe, expect, it } from 'vitest'
import { MOST_PRINTED } from '#lib/entry/kept-sheet.ts'
import type { WorkedOn } from '#lib/entry/worked-on.ts'
import { checkNames, checkSize } from '#lib/workflow/draft-fields.ts'
import { readForm } from '../../app/_write/read.ts'
import { sheetChanges } from '../../app/_write/sheets.ts'

const ID = '01890000-0000-7000-8000-000000000001'
const OTHER = '01890000-0000-7000-8000-000000000002'
const copy = (sheet: string, value: string): WorkedOn => ({
  sheet,
  title: 'Sample from the plinth',
  calculation: 'sample',
  address: '/work-out/sample?dry-g=100',
  edition: '2026-11',
  sums: 3,
  digest: '0123456789',
  figures: [
    { label: 'Aggregate to lime', value },
    { label: 'Soluble', value: '12 %' },
  ],
})
const SHEETS = new Map([
  [ID, copy(ID, '1 : 3')],
  [OTHER, { ...copy(OTHER, '1 : 2'), figures: [{ label: 'Voids', value: '34 %' }] }],
])

/** A draft's text once the changes are made. */
function filled(typed: Record<string, string>): Record<string, string> {
  const changes = sheetChanges({ kind: 'recipe', typed }, SHEETS)
  for (const [name, { was }] of Object.entries(changes))
    expect([name, typed[name] ?? '']).toEqual([name, was])
  const after = {
    ...typed,
    ...Object.fromEntries(Object.entries(changes).map(([name, { is }]) => [name, is])),
  }
  return Object.fromEntries(Object.entries(after).filter(([, text]) => text !== ''))
}

const sheetsIn = (typed: Record<string, string>) =>
  (readForm('recipe', typed, (_, text) => text).body as { sheets?: WorkedOn[] }).sheets

describe('sheetChanges(draft, sheets)', () => {
  it('brings the figures of a chosen sheet in, and keeps what its writer said of it', () => {
    const typed = filled({ 'sheets.0.sheet': ID, 'sheets.0.of': 'The plinth.' })
    expect(sheetsIn(typed)).toEqual([{ ...copy(ID, '1 : 3'), of: 'The plinth.' }])
    expect(sheetChanges({ kind: 'recipe', typed }, SHEETS)).toEqual({})
  })

  it('puts another sheet in the place of the first, with no figure left over', () => {
    const typed = filled({ ...filled({ 'sheets.0.sheet': ID }), 'sheets.0.sheet': OTHER })
    expect(sheetsIn(typed)).toEqual([SHEETS.get(OTHER)])
  })

  it('takes the figures out when no sheet is chosen any more', () => {
    const { 'sheets.0.sheet': _, ...rest } = filled({ 'sheets.0.sheet': ID })
    expect(filled(rest)).toEqual({})
  })

  it('brings in as many sheets as an entry may rest on, each with as many figures as may be kept of it', () => {
    const ids = [1, 2, 3, 4].map((k) => ID.replace(/1$/, String(k)))
    const figures = Array.from({ length: MOST_PRINTED }, (_, k) => ({
      label: `Work ${k % 8}, pointing units of one size, mortar in place, ${k}`,
      value: '1234.5 kg (1100.5–1400.5)',
    }))
    const sheets = new Map(ids.map((id) => [id, { ...copy(id, '1'), figures }]))
    const typed = Object.fromEntries(ids.map((id, k) => [`sheets.${k}.sheet`, id]))
    const changes = sheetChanges({ kind: 'recipe', typed }, sheets)
    checkNames('recipe', changes)
    checkSize(Object.entries(changes).map(([name, { is }]) => [name, is]))
    const after = {
      ...typed,
      ...Object.fromEntries(Object.entries(changes).map(([name, { is }]) => [name, is])),
    }
    expect(sheetsIn(after)).toEqual([...sheets.values()])
    const { faults } = readForm('recipe', after, (_, text) => text)
    expect(faults.filter(({ field }) => field.startsWith('sheets'))).toEqual([])
  })

  it('puts figures right that somebody changed, and leaves a sheet alone that its writer does not keep', () => {
    const typed = { ...filled({ 'sheets.0.sheet': ID }), 'sheets.0.figures.0.value': '1 : 9' }
    expect(sheetsIn(filled(typed))?.[0]?.figures[0]?.value).toBe('1 : 3')
    const foreign = { 'sheets.1.sheet': ID.replace('1', '9'), 'sheets.1.title': 'Of another' }
    expect(filled(foreign)).toEqual(foreign)
  })
})
