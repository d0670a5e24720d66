import { existsSync, mkdtempSync, readdirSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest'
import { run } from '#lib/cli/take-in.ts'
import { loadContent } from '#lib/content/load.ts'
import type { MaterialBody } from '#lib/entry/material.ts'
import type { SourceBody } from '#lib/entry/source.ts'
import { writeFolder } from '../content/folder.ts'
import { publish } from '../support/make.ts'

const folder = mkdtempSync(join(tmpdir(), 'putlog-take-in-'))
const source: SourceBody = {
  type: 'book',
  title: 'Lime in a small country',
  author: [{ family: 'Invented', given: 'A.' }],
  issued: { year: 1931 },
  publisher: 'A press',
  invented: false,
}
const material: MaterialBody = {
  title: 'Sand of the ford',
  summary: 'Washed sand from a river: sharp, and clean of clay.',
  role: 'aggregate',
  region: {},
  properties: [
    {
      property: 'bulkDensity',
      low: 1400,
      typical: 1500,
      high: 1600,
      basis: 'measured',
      note: 'Loose and dry.',
    },
  ],
  standing: 'in-use',
  invented: false,
}

beforeAll(async () => {
  writeFolder(folder)
  vi.spyOn(console, 'log').mockImplementation(() => {})
  await publish('source', 'lime-1931', source)
  await publish('source', 'made-up', { ...source, invented: true })
  await publish('material', 'ford-sand', material)
  await publish('material', 'resting-sand', {
    ...material,
    properties: [{ ...material.properties[0], basis: 'read', source: { source: 'a-book', locator: 'p. 3' } }],
  })
})
afterAll(() => rmSync(folder, { recursive: true }))

const contentOf = () => {
  const outcome = loadContent(folder)
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.faults))
  return outcome.content
}

describe('npm run take-in', () => {
  it('writes a source and a material as content that says the same, under the address they had', async () => {
    expect(await run(['source', 'lime-1931', folder])).toBe(0)
    expect(await run(['material', 'ford-sand', folder])).toBe(0)
    const content = contentOf()
    expect(content.sources.get('lime-1931')).toMatchObject({
      id: 'lime-1931',
      title: source.title,
      author: [{ family: 'Invented', given: 'A.' }],
      issued: { 'date-parts': [[1931]] },
    })
    expect(content.materials.get('ford-sand')).toMatchObject({
      label: material.title,
      description: material.summary,
      role: 'aggregate',
      properties: { bulkDensity: { low: 1400, typical: 1500, high: 1600, unit: 'kg/m3', basis: 'measured' } },
    })
  })

  it('writes nothing over a file, nothing invented, and nothing that content could not hold', async () => {
    const before = readdirSync(folder, { recursive: true }).sort()
    await expect(run(['source', 'lime-1931', folder])).rejects.toThrow(/is there already/)
    await expect(run(['source', 'made-up', folder])).rejects.toThrow(/is invented/)
    await expect(run(['source', 'nowhere', folder])).rejects.toThrow(/Nothing of that kind/)
    await expect(run(['material', 'lime-1931', folder])).rejects.toThrow(/Nothing of that kind/)
    // It rests on a source that this content does not have.
    await expect(run(['material', 'resting-sand', folder])).rejects.toThrow(/unknown source/)
    for (const args of [[], ['recipe', 'x'], ['source', '../x']]) expect(() => run(args)).toThrow(/Say what/)
    expect(readdirSync(folder, { recursive: true }).sort()).toEqual(before)
    expect(existsSync(join(folder, 'materials/resting-sand.yaml'))).toBe(false)
  })
})
