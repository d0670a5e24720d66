import { expect, test } from 'vitest'
import { STANDINGS } from '#lib/entry/terms.ts'
import { faultsWith, loadWith, table } from './folder.ts'

const walls = (...rows: string[]) => ({ 'tables/walls.md': table(...rows) })

test('loadContent(dir) reads a right folder into frozen maps', () => {
  const outcome = loadWith({})
  if (!outcome.ok) throw new Error('expected right content')
  const row = outcome.content.rows.get('walls#common')
  expect(row).toEqual({
    id: 'common',
    ref: 'walls#common',
    table: 'walls',
    label: 'A mortar',
    region: 'Europe',
    period: '1800s',
    from: 1800,
    to: 1899,
    uses: ['bedding-rubble'],
    measured: 'Lime putty',
    ingredients: [
      { material: 'lime', role: 'lime', parts: { low: 1, high: 1 }, by: 'volume', state: 'putty' },
      { material: 'sand', role: 'aggregate', parts: { low: 3, high: 3 }, by: 'volume', state: 'not-stated' },
    ],
    basis: 'read',
    standing: 'in-use',
    citation: { source: 'handbook', locator: 'p. 5' },
  })
  expect(() => (outcome.content.rows as Map<string, unknown>).clear()).toThrow('content is read-only')
  expect(() => Object.assign(row ?? {}, { label: 'Other' })).toThrow(TypeError)
})

test('loadContent(dir) reads an empty folder as no content', () => {
  const outcome = loadWith({
    'sources/handbook.json': undefined,
    'materials/lime.yaml': undefined,
    'materials/sand.yaml': undefined,
    'materials/salt.yaml': undefined,
    'vocabularies/units.yaml': undefined,
    'cautions/burns.md': undefined,
    'tables/walls.md': undefined,
  })
  expect(outcome.ok && outcome.content.rows.size).toBe(0)
})

test('loadContent(dir) names an unknown material where it stands in the cell', () => {
  expect(faultsWith(walls('| a | 1 lime (putty) : 3 sandd | p. 5 |'))).toEqual([
    'content/tables/walls.md:16:24 unknown material "sandd"',
  ])
})

test('loadContent(dir) names an unknown use, in the front matter and in a cell', () => {
  const front = table('| a | 1 lime (putty) | p. 5 |').replace('[bedding-rubble]', '[beding]')
  const [fault] = faultsWith({ 'tables/walls.md': front })
  expect(fault).toMatch(
    /^content\/tables\/walls\.md:8:7 use\.0: Invalid option: expected one of "bedding-rubble"/,
  )
})

test('loadContent(dir) wants a lime to name its state', () => {
  expect(faultsWith(walls('| a | 1 lime : 3 sand | p. 5 |'))).toEqual([
    'content/tables/walls.md:16:7 lime "lime" must name the state it was measured in',
  ])
})

test('loadContent(dir) names an unknown state', () => {
  const [fault] = faultsWith(walls('| a | 1 lime (slaked) : 3 sand | p. 5 |'))
  expect(fault).toMatch(/^content\/tables\/walls\.md:16:7 unknown state "slaked"; one of: lump-quicklime /)
})

test.each([
  ['zero parts', '1 lime (putty) : 0 sand', 24, 'parts "0" must be above zero and rise from low to high'],
  [
    'a falling range',
    '1 lime (putty) : 3-2 sand',
    24,
    'parts "3-2" must be above zero and rise from low to high',
  ],
  [
    'no parts',
    '1 lime (putty) : sand',
    24,
    '"sand" is not an ingredient such as "3 sand-pit" or "1 lime-fat (putty)"',
  ],
  [
    'mass beside volume',
    '1 lime (putty) by mass : 3 sand',
    7,
    'parts by volume and parts by mass cannot stand in one row',
  ],
])('loadContent(dir) refuses %s', (_, cell, column, reason) => {
  expect(faultsWith(walls(`| a | ${cell} | p. 5 |`))).toEqual([
    `content/tables/walls.md:16:${column} ${reason}`,
  ])
})

test('loadContent(dir) names an unknown source', () => {
  const text = table('| a | 1 lime (putty) | p. 5 |').replace('source: handbook', 'source: handbok')
  expect(faultsWith({ 'tables/walls.md': text })).toEqual([
    'content/tables/walls.md:16:24 unknown source "handbok"',
  ])
})

test('loadContent(dir) refuses a locator that does not fit its kind of source', () => {
  const [fault] = faultsWith(walls('| a | 1 lime (putty) | leaf 4 |'))
  expect(fault).toMatch(
    /^content\/tables\/walls\.md:16:24 locator "leaf 4" does not fit a source of type book; /,
  )
})

test('loadContent(dir) wants a locator', () => {
  expect(faultsWith(walls('| a | 1 lime (putty) | |'))).toEqual([
    'content/tables/walls.md:16:22 a row needs a locator',
  ])
})

test('loadContent(dir) wants a basis', () => {
  const text = table('| a | 1 lime (putty) | p. 5 |').replace('basis: read\n', '')
  expect(faultsWith({ 'tables/walls.md': text })).toEqual([
    'content/tables/walls.md:15:1 a row needs a basis',
  ])
})

test('loadContent(dir) names both places of a repeated id', () => {
  expect(faultsWith(walls('| a | 1 lime (putty) | p. 5 |', '| a | 1 lime (putty) | p. 6 |'))).toEqual([
    'content/tables/walls.md:17:3 row "walls#a" is already at content/tables/walls.md:16',
  ])
})

test('loadContent(dir) wants a reason for any standing but in use', () => {
  const text = table('| a | 1 lime (putty) | p. 5 |').replace('standing: in-use', 'standing: historical-only')
  expect(faultsWith({ 'tables/walls.md': text })).toEqual([
    'content/tables/walls.md:16:1 standing historical-only needs a reason',
  ])
})

test('loadContent(dir) offers no mix more freely than its worst material', () => {
  expect(STANDINGS).toEqual(['in-use', 'historical-only', 'known-hazard'])
  expect(faultsWith(walls('| a | 1 lime (putty) : ? salt | p. 5 |'))).toEqual([
    'content/tables/walls.md:16:1 standing in-use is more free than that of salt, which is known-hazard',
  ])
})

test('loadContent(dir) refuses raw HTML, with its place', () => {
  const text = table('| a | 1 lime (putty) | p. 5 |').replace('---\n\n|', '---\n\nA <b>bold</b> word.\n\n|')
  expect(faultsWith({ 'tables/walls.md': text })).toEqual([
    'content/tables/walls.md:14:3 raw HTML is not allowed',
    'content/tables/walls.md:14:10 raw HTML is not allowed',
  ])
})

test('loadContent(dir) finds a link that leads nowhere', () => {
  const text = table('| a | 1 lime (putty) | p. 5 |').replace(
    '---\n\n|',
    '---\n\nSee [this](../tables/walls.md#b) and [that](other.md).\n\n|',
  )
  expect(faultsWith({ 'tables/walls.md': text })).toEqual([
    'content/tables/walls.md:14:5 broken link "../tables/walls.md#b"',
    'content/tables/walls.md:14:38 broken link "other.md"',
  ])
})

test('loadContent(dir) wants front matter, and refuses what it does not know in it', () => {
  expect(faultsWith({ 'cautions/burns.md': 'Keep away.\n' })).toEqual([
    'content/cautions/burns.md:1:1 the page must begin with front matter between --- lines',
  ])
  const text = table('| a | 1 lime (putty) | p. 5 |').replace('region:', 'Region:')
  expect(faultsWith({ 'tables/walls.md': text })).toEqual([
    'content/tables/walls.md:4:1 unknown field Region',
  ])
})

test('loadContent(dir) names an unknown column', () => {
  const text = table('| a | 1 lime (putty) | p. 5 |').replace('locator | label', 'place | label')
  const [fault] = faultsWith({ 'tables/walls.md': text })
  expect(fault).toMatch(
    /^content\/tables\/walls\.md:14:22 unknown column "place"; columns are: id label use /,
  )
})

test('loadContent(dir) keeps rows from memory apart and lets none carry another row', () => {
  const head = table()
    .replace('| locator |', '| locator | basis | ancestor |')
    .replace('| ------- |', '| ------- | -- | -- |')
  const rows = [
    '| a | 1 lime (putty) | p. 5 | memory | | A |',
    '| b | 1 lime (putty) | p. 6 | read | walls#a | B |',
  ]
  expect(faultsWith({ 'tables/walls.md': `${head.trimEnd()}\n${rows.join('\n')}\n` })).toEqual([
    'content/tables/walls.md:17:3 a read row cannot rest on "walls#a", which is from memory',
    'content/tables/walls.md:17:3 rows from memory stay in a table of their own; "a" is memory',
  ])
})

test('loadContent(dir) names an unknown ancestor', () => {
  const head = table()
    .replace('| locator |', '| locator | ancestor |')
    .replace('| ------- |', '| ------- | -- |')
  const text = `${head.trimEnd()}\n| a | 1 lime (putty) | p. 5 | walls#z | A |\n`
  expect(faultsWith({ 'tables/walls.md': text })).toEqual([
    'content/tables/walls.md:16:3 unknown row "walls#z" given as ancestor',
  ])
})

test('loadContent(dir) asks for every caution in Spanish too, paragraph by paragraph', () => {
  const front = 'title: Burns\nnotice: It burns.\norder: 1\nappliesTo:\n  roles: [lime]\n'
  const caution = (es: string) => ({ 'cautions/burns.md': `---\n${front}${es}---\n\nKeep away.\n\nWash.\n` })
  expect(faultsWith(caution(''))).toEqual([expect.stringContaining('es: ')])
  expect(faultsWith(caution('es:\n  title: Quemaduras\n  notice: Quema.\n'))).toEqual([
    expect.stringContaining('body'),
  ])
  expect(faultsWith(caution('es:\n  title: Quemaduras\n  notice: Quema.\n  body: [Apartarse.]\n'))).toEqual([
    'content/cautions/burns.md:10:3 1 paragraphs in Spanish for 2 in English; each has its own',
  ])
})

test('loadContent(dir) checks a material: its unit, its order, its source, its cautions', () => {
  const lime = (property: string) => ({
    'materials/lime.yaml': `label: Lime\nrole: lime\ndescription: Burned.\nproperties:\n  freeCaO: ${property}\n`,
  })
  expect(faultsWith(lime('{ low: 0.8, typical: 0.9, high: 0.95, unit: "%", basis: memory }'))).toEqual([
    'content/materials/lime.yaml:5:50 properties.freeCaO.unit: must be 1',
  ])
  expect(faultsWith(lime('{ low: 0.8, typical: 0.7, high: 0.95, unit: "1", basis: memory }'))).toEqual([
    'content/materials/lime.yaml:5:3 properties.freeCaO: low, typical and high are out of order',
  ])
  expect(faultsWith(lime('{ low: 0.8, typical: 0.9, high: 0.95, unit: "1", basis: read }'))).toEqual([
    'content/materials/lime.yaml:5:3 properties.freeCaO: a figure that is not from memory, practice or measurement names its source',
  ])
  expect(
    faultsWith({ 'materials/lime.yaml': 'label: Lime\nrole: lime\ndescription: B.\ncautions: [falls]\n' }),
  ).toEqual(['content/materials/lime.yaml:4:12 unknown caution "falls"'])
})

test('loadContent(dir) finds a broader term that is missing or goes round', () => {
  const units = (text: string) => ({ 'vocabularies/units.yaml': `title: Units\nterms:\n${text}` })
  expect(faultsWith(units('  - { id: chalk, label: Chalk, broader: limestone }\n'))).toEqual([
    'content/vocabularies/units.yaml:3:32 unknown broader term "limestone"',
  ])
  expect(
    faultsWith(units('  - { id: a, label: A, broader: b }\n  - { id: b, label: B, broader: a }\n')),
  ).toEqual([
    'content/vocabularies/units.yaml:3:24 term "a" is broader than itself',
    'content/vocabularies/units.yaml:4:24 term "b" is broader than itself',
  ])
})

test('loadContent(dir) gives all faults of all files at once, by file, line and column', () => {
  const faults = faultsWith({
    ...walls('| B | 1 lime (putty) : 3 sandd | p. 5 |', '| c | 1 lime (putty) | page 5 |'),
    'sources/handbook.json': '{\n  "id": "other",\n  "type": "book",\n  "title": "A handbook"\n}\n',
  })
  expect(faults.map((fault) => fault.split(' ')[0])).toEqual([
    'content/sources/handbook.json:2:3',
    'content/tables/walls.md:16:3',
    'content/tables/walls.md:16:24',
    'content/tables/walls.md:16:34',
    'content/tables/walls.md:17:24',
  ])
})

test('loadContent(dir).edition changes with a figure and stays with a sentence', () => {
  const edition = (files: Record<string, string>) => {
    const outcome = loadWith(files)
    return outcome.ok ? outcome.content.edition : 'wrong'
  }
  const before = edition({})
  expect(before).toMatch(/^[0-9a-f]{12}$/)
  expect(edition({ 'materials/sand.yaml': 'label: Sand\nrole: aggregate\ndescription: Grains.\n' })).toBe(
    before,
  )
  expect(edition(walls('| common | 1 lime (putty) : 2 sand | p. 5 |'))).not.toBe(before)
})
