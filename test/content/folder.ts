import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { loadContent } from '#lib/content/load.ts'

/** A small content folder that is right in every part; tests replace a file to make it wrong. */
const RIGHT: Readonly<Record<string, string>> = {
  'sources/handbook.json': '{\n  "id": "handbook",\n  "type": "book",\n  "title": "A handbook"\n}\n',
  'materials/lime.yaml': 'label: Lime\nrole: lime\ndescription: Burned limestone.\n',
  'materials/sand.yaml': 'label: Sand\nrole: aggregate\ndescription: Small stones.\n',
  'materials/salt.yaml':
    'label: Salt\nrole: additive\ndescription: Common salt.\nstanding: known-hazard\nstandingReason: It harms the wall.\n',
  'vocabularies/units.yaml': 'title: Units\nterms:\n  - id: stone\n    label: Stone\n',
  'cautions/burns.md':
    '---\ntitle: Burns\nnotice: It burns.\norder: 1\nappliesTo:\n  roles: [lime]\nes:\n  title: Quemaduras\n  notice: Quema.\n  body: [Apartarse.]\n---\n\nKeep away.\n',
  'tables/walls.md': table('| common | 1 lime (putty) : 3 sand | p. 5 |'),
}

/** The text of a table whose first row stands on line 16. */
export function table(...rows: string[]): string {
  return [
    '---',
    'title: Walls',
    'source: handbook',
    'region: Europe',
    'period: 1800s',
    'from: 1800',
    'to: 1899',
    'use: [bedding-rubble]',
    'measured: Lime putty',
    'basis: read',
    'standing: in-use',
    '---',
    '',
    '| id | ingredients | locator | label |',
    '| -- | ----------- | ------- | ----- |',
    ...rows.map((row) => `${row} A mortar |`),
    '',
  ].join('\n')
}

/** Writes the right folder with some files replaced (or, given nothing, left out). */
export function writeFolder(dir: string, files: Readonly<Record<string, string | undefined>> = {}): void {
  for (const [path, text] of Object.entries({ ...RIGHT, ...files })) {
    if (text === undefined) continue
    mkdirSync(dirname(join(dir, path)), { recursive: true })
    writeFileSync(join(dir, path), text)
  }
}

/** Loads the right folder with some files replaced (or, given nothing, left out). */
export function loadWith(files: Readonly<Record<string, string | undefined>>) {
  const dir = mkdtempSync(join(tmpdir(), 'putlog-content-'))
  try {
    writeFolder(dir, files)
    return loadContent(dir)
  } finally {
    rmSync(dir, { recursive: true })
  }
}

/** The faults of the right folder with some files replaced, one printed line each. */
export function faultsWith(files: Readonly<Record<string, string | undefined>>): readonly string[] {
  const outcome = loadWith(files)
  return outcome.ok ? [] : outcome.faults.map((f) => `${f.file}:${f.line}:${f.column} ${f.reason}`)
}
