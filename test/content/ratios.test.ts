import { describe, expect, it, vi } from 'vitest'
import { content } from '#lib/content/index.ts'
import { isCurrent, rowRatios, workOutRatios } from '#lib/content/ratios.ts'
import type { TableRow } from '#lib/content/types.ts'
import { LIME_STATES } from '#lib/entry/terms.ts'

vi.setConfig({ testTimeout: 60_000 })

const all = content()
function rowOf(ref: string): TableRow {
  const row = all.rows.get(ref)
  if (!row) throw new Error(`no row ${ref}`)
  return row
}

describe('rowRatios(row, materials)', () => {
  it('keeps the stated proportion where lime and sand were measured as they are compared', () => {
    // The pocket book of about 1900 gives one of lump lime to five of sand, dry, and works it through.
    const ratio = rowRatios(rowOf('us-common-lime-mortar#pocketbook-example'), all.materials)?.[
      'lump-quicklime'
    ]
    expect(ratio).toEqual({ low: 5, typical: 5, high: 5 })
  })

  it('asks more sand of lime as quicklime than as putty, and more of putty than of dry hydrate, for fat lime', () => {
    const ratios = rowRatios(rowOf('vitruvius-mortar#pit-sand'), all.materials)
    const typical = LIME_STATES.map((state) => ratios?.[state]?.typical ?? 0)
    const [lump = 0, ground = 0, hydrate = 0, putty = 0] = typical
    expect(ground).toBeGreaterThan(lump)
    expect(lump).toBeGreaterThan(putty)
    expect(putty).toBeGreaterThan(hydrate)
  })

  it('is null without lime or without aggregate', () => {
    const row = rowOf('vitruvius-mortar#pit-sand')
    const without = (role: string) => ({
      ...row,
      ingredients: row.ingredients.filter((one) => one.role !== role),
    })
    expect(rowRatios(without('lime'), all.materials)).toBeNull()
    expect(rowRatios(without('aggregate'), all.materials)).toBeNull()
  })
})

describe('workOutRatios(content, pause)', () => {
  const few = { ...all, rows: new Map([...all.rows].slice(0, 2)) }

  it('works out each row by its address and pauses after each', async () => {
    let pauses = 0
    const file = await workOutRatios(few, async () => {
      pauses += 1
    })
    expect(pauses).toBe(2)
    for (const [ref, ratios] of Object.entries(file.ratios))
      expect(ratios).toEqual(rowRatios(rowOf(ref), all.materials))
    expect(isCurrent(file, all)).toBe(true)
  })

  it('is no longer current once the content is another', async () => {
    const file = await workOutRatios({ ...few, rows: new Map() }, async () => {})
    expect(isCurrent(file, { ...all, edition: 'another' })).toBe(false)
    expect(isCurrent({ ...file, sums: file.sums + 1 }, all)).toBe(false)
  })
})
