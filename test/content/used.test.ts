import { readdirSync, readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { parse } from 'yaml'
import { content } from '#lib/content/index.ts'
import * as terms from '#lib/entry/terms.ts'
import { BASES } from '#lib/mortar/range.ts'

const { vocabularies } = content()

const demo = (folder: string) =>
  readdirSync(`content/demo/${folder}`).map((name) =>
    parse(readFileSync(`content/demo/${folder}/${name}`, 'utf8')),
  )

/** A term and all that are broader. */
function lineage(vocabulary: string, id: string): string[] {
  const broader = vocabularies.get(vocabulary)?.get(id)?.broader
  return broader === undefined ? [id] : [id, ...lineage(vocabulary, broader)]
}

const unused = (vocabulary: string, used: ReadonlySet<string>) =>
  [...(vocabularies.get(vocabulary)?.values() ?? [])]
    .filter(({ id, reserved }) => !reserved && !used.has(id))
    .map(({ id }) => id)

test('every unit is named by a demo recipe or case, or is marked reserved', () => {
  const named = [
    ...demo('cases').flatMap(({ body }) => body.fabric.units.map(({ unit }: { unit: string }) => unit)),
    ...demo('recipes').flatMap(({ body }) => body.units),
  ]
  expect(unused('units', new Set(named.flatMap((id) => lineage('units', id))))).toEqual([])
})

test('every country is named by a demo case, or is marked reserved', () => {
  const countries = new Set<string>(demo('cases').map(({ body }) => body.place.country))
  expect(unused('countries', countries)).toEqual([])
})

/** Lists whose ids are named by the shape of every body (real.test.ts holds the two together), and those above. */
const NAMED = new Set<string>([...Object.values(terms).flat(), ...BASES])

test('every other list holds only what is marked reserved', () => {
  const others = [...vocabularies].filter(
    ([id, list]) => id !== 'units' && id !== 'countries' && ![...list.keys()].every((one) => NAMED.has(one)),
  )
  expect(others.map(([id]) => id)).toEqual([
    'climates',
    'deterioration',
    'exposure-classes',
    'survey-classes',
  ])
  for (const [id] of others) expect(unused(id, new Set()), id).toEqual([])
})
