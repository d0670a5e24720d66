import { readdirSync, readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { citedSources, findGaps } from '#lib/content/gaps.ts'
import { content as readContent } from '#lib/content/index.ts'
import * as terms from '#lib/entry/terms.ts'
import { PROPERTY_LIMITS } from '#lib/mortar/material.ts'
import { BASES } from '#lib/mortar/range.ts'

const content = readContent()

/** Every closed list and the vocabulary that defines it; lime states are the first of the measured states. */
const CLOSED: Record<string, readonly string[]> = {
  kinds: terms.KINDS,
  standings: terms.STANDINGS,
  bases: BASES,
  families: terms.FAMILIES,
  uses: terms.USES,
  methods: terms.METHODS,
  'measured-states': terms.MEASURED_STATES,
  roles: terms.ROLES,
  measures: terms.MEASURES,
  'wall-types': terms.WALL_TYPES,
  'driving-rain': terms.DRIVING_RAIN,
  frost: terms.FROST,
  ground: terms.GROUND,
  aspects: terms.ASPECTS,
  salts: terms.SALTS,
  'joint-states': terms.JOINT_STATES,
  'unit-states': terms.UNIT_STATES,
  'damp-states': terms.DAMP_STATES,
  seasons: terms.SEASONS,
  structures: terms.STRUCTURES,
  'work-ends': terms.WORK_ENDS,
  observers: terms.OBSERVERS,
  'reading-kinds': terms.READING_KINDS,
}

test.each(Object.entries(CLOSED))(
  'vocabulary %s has every id of its list and no other, in its order',
  (id, list) => {
    expect([...(content.vocabularies.get(id)?.keys() ?? [])]).toEqual(list)
  },
)

test('every list of terms.ts has a vocabulary', () => {
  const lists = Object.entries(terms).filter(([name]) => name !== 'LIME_STATES')
  const covered = Object.values(CLOSED)
  expect(lists.filter(([, list]) => !covered.includes(list)).map(([name]) => name)).toEqual([])
  expect(terms.MEASURED_STATES.slice(0, terms.LIME_STATES.length)).toEqual(terms.LIME_STATES)
})

test('every step of the joint, unit and damp scales has a definition of its own', () => {
  for (const scale of ['joint-states', 'unit-states', 'damp-states']) {
    const definitions = [...(content.vocabularies.get(scale)?.values() ?? [])].map(
      ({ definition }) => definition,
    )
    expect(definitions.every((definition) => definition !== undefined)).toBe(true)
    expect(new Set(definitions).size).toBe(definitions.length)
  }
})

/** The families of the ICOMOS-ISCS illustrated glossary (2008), in its order, and one of our own for mortar. */
const DETERIORATION = [
  'general',
  'crack-and-deformation',
  'detachment',
  'features-induced-by-material-loss',
  'discolouration-and-deposit',
  'biological-colonization',
  'mortar-terms',
]

test('every deterioration term has a definition of its own and belongs to a family of the glossary', () => {
  const list = [...(content.vocabularies.get('deterioration')?.values() ?? [])]
  expect(list.filter(({ broader }) => broader === undefined).map(({ id }) => id)).toEqual(DETERIORATION)
  expect(new Set(list.map(({ definition }) => definition ?? '')).size).toBe(list.length)
  for (const { id, broader, source } of list) {
    const ours = id === 'mortar-terms' || broader === 'mortar-terms'
    expect(source, id).toBe(ours ? undefined : 'iscs-glossary-2008')
  }
})

test.each([
  ['driving-rain', 'BS 8104'],
  ['frost', 'EN 1996-2'],
  ['ground', 'EN 1996-2'],
  ['salts', 'EN 1996-2'],
  ['exposure-classes', 'EN 1996-2'],
  ['survey-classes', 'EN 16096'],
])('the list %s names its standard, %s', (id, standard) => {
  expect(content.vocabularyHeads.get(id)?.note).toContain(standard)
})

test('the climates are the thirty classes of the map by Beck and others (2018)', () => {
  expect(content.vocabularies.get('climates')?.size).toBe(30)
})

test('there are at least 45 tables with 200 rows, 150 of them read in the source', () => {
  expect(content.tables.size).toBeGreaterThanOrEqual(45)
  expect(content.rows.size).toBeGreaterThanOrEqual(200)
  expect([...content.rows.values()].filter(({ basis }) => basis === 'read').length).toBeGreaterThanOrEqual(
    150,
  )
})

test('every use has a row', () => {
  const used = new Set([...content.rows.values()].flatMap(({ uses }) => uses))
  expect(terms.USES.filter((use) => !used.has(use))).toEqual(['deep-packing'])
})

test('no row with cement, salt or lead is in use', () => {
  const barred = ['portland-cement', 'salt-common', 'zinc-sulphate', 'sand-sea', 'water-sea', 'lead-white']
  const offered = [...content.rows.values()].filter(
    ({ standing, ingredients }) =>
      standing === 'in-use' && ingredients.some((one) => barred.includes(one.material)),
  )
  expect(offered.map(({ ref }) => ref)).toEqual([])
})

test('every row with cement carries its reason', () => {
  const cemented = [...content.rows.values()].filter(({ ingredients }) =>
    ingredients.some(({ role }) => role === 'cement'),
  )
  expect(cemented.length).toBeGreaterThan(10)
  expect(cemented.filter(({ standingReason }) => standingReason === undefined).map(({ ref }) => ref)).toEqual(
    [],
  )
  expect(cemented.filter(({ standing }) => standing === 'in-use').map(({ ref }) => ref)).toEqual([])
})

test('every row that says it has an ancestor comes no earlier than the ancestor', () => {
  for (const { ref, from, ancestor } of content.rows.values()) {
    const older = ancestor === undefined ? undefined : content.rows.get(ancestor)
    if (older) expect(from, ref).toBeGreaterThanOrEqual(older.from)
  }
})

test('no source is a copy of a standard, and none names a machine or a registry', () => {
  for (const { id, type, URL } of content.sources.values()) {
    if (type === 'standard') expect(URL, id).toBeUndefined()
    expect(URL ?? '', id).not.toMatch(/scribd|123doc|localhost|npmjs|file:/)
  }
})

/** The text of all sums, for what they cite. */
const sums = readdirSync('lib/mortar', { recursive: true, encoding: 'utf8' })
  .filter((name) => name.endsWith('.ts'))
  .map((name) => readFileSync(`lib/mortar/${name}`, 'utf8'))
  .join('\n')

test('every source is cited, by content or by the sums', () => {
  const cited = citedSources(content)
  const isCited = (id: string) => cited.has(id) || sums.includes(`'${id}'`) || sums.includes(`'${id}, `)
  expect([...content.sources.keys()].filter((id) => !isCited(id))).toEqual([])
})

test('every source that the sums cite is in content', () => {
  const cited = [...sums.matchAll(/source: '([a-z0-9-]+)[,']|[A-Z_]+ = '([a-z0-9]+-[a-z0-9-]+), /g)]
  const ids = [...new Set(cited.map(([, direct, named]) => direct ?? named ?? ''))]
  expect(ids.length).toBeGreaterThan(10)
  expect(ids.filter((id) => !content.sources.has(id))).toEqual([])
})

test('every material figure lies within the limits that the sums accept', () => {
  for (const { id, properties } of content.materials.values()) {
    for (const [name, { low, high }] of Object.entries(properties)) {
      const limits = PROPERTY_LIMITS[name as keyof typeof PROPERTY_LIMITS]
      if (limits.above !== undefined) expect(low, `${id}.${name}`).toBeGreaterThan(limits.above)
      if (limits.min !== undefined) expect(low, `${id}.${name}`).toBeGreaterThanOrEqual(limits.min)
      if (limits.max !== undefined) expect(high, `${id}.${name}`).toBeLessThanOrEqual(limits.max)
    }
  }
})

test('every lime has what the sums ask of it', () => {
  for (const { id, role, properties } of content.materials.values()) {
    if (role !== 'lime') continue
    const needed = [
      'freeCaO',
      'bulkDensityLump',
      'bulkDensityGround',
      'bulkDensityHydrate',
      'puttyDensity',
    ] as const
    expect(
      needed.filter((name) => properties[name] === undefined),
      id,
    ).toEqual([])
  }
})

test('every caution is reached by a material, a use or a method', () => {
  for (const { id, appliesTo } of content.cautions.values()) {
    const { materials, roles, uses, methods } = appliesTo
    const named = [...content.materials.values()].some(({ cautions }) => cautions.includes(id))
    expect(named || materials.length + roles.length + uses.length + methods.length > 0, id).toBe(true)
  }
})

test('every lime shows the caution of lime, and every quicklime method that of quicklime', () => {
  const cautions = [...content.cautions.values()]
  expect(
    cautions.some(({ id, appliesTo }) => id === 'lime-putty-and-dust' && appliesTo.roles.includes('lime')),
  ).toBe(true)
  for (const method of ['hot-mixed-used-hot', 'hot-mixed-laid-down', 'sand-slaked']) {
    const shown = cautions.filter(({ appliesTo }) => appliesTo.methods.includes(method)).map(({ id }) => id)
    expect(shown, method).toEqual(expect.arrayContaining(['quicklime', 'hot-mortar']))
  }
})

test('every caution sends its reader to the local code and the data sheet', () => {
  for (const { id, body } of content.cautions.values()) {
    expect(body.at(-1), id).toContain('Follow your local code and the supplier’s data sheet')
  }
})

/** Figures as numbers, in their order: English parts thousands by commas, Spanish writes decimals with them. */
const figuresIn = (text: string, comma: '' | '.') =>
  (text.match(/\d(?:[\d.,]*\d)?/g) ?? []).map((one) => Number(one.replaceAll(',', comma)))

test('every caution says in Spanish the figures that it says in English, and sends to code and data sheet', () => {
  for (const { id, title, notice, body, es } of content.cautions.values()) {
    expect(es.body.at(-1), id).toContain('Seguir la normativa local y la ficha de datos del proveedor')
    const [english, spanish] = [
      [title, notice, ...body],
      [es.title, es.notice, ...es.body],
    ]
    expect(
      spanish.map((text) => figuresIn(text, '.')),
      id,
    ).toEqual(english.map((text) => figuresIn(text, '')))
    expect(
      spanish.filter((text) => english.includes(text)),
      id,
    ).toEqual([])
  }
})

test('first aid for lime names two public bodies', () => {
  for (const id of ['quicklime', 'lime-putty-and-dust']) {
    const body = content.cautions.get(id)?.body.join(' ') ?? ''
    expect(body).toContain('International Programme on Chemical Safety')
    expect(body).toContain('European Chemicals Agency')
  }
})

/** Identifiers of CGI simple lithology (2020) that stone here may bear; it has none called sandstone or dolomite. */
const CGI = new Set(
  [
    'sedimentary_rock limestone chalk travertine impure_limestone dolostone clastic_sandstone wacke shale',
    'clastic_mudstone siltstone clastic_conglomerate breccia non_clastic_siliceous_sedimentary_rock',
    'rock_gypsum_or_anhydrite iron_rich_sedimentary_rock igneous_rock granite granodiorite syenite diorite',
    'gabbro doleritic_rock basalt andesite rhyolite trachyte porphyry ash_tuff_lapillistone_and_lapilli_tuff',
    'metamorphic_rock slate phyllite schist gneiss quartzite marble serpentinite anthropogenic_material',
  ].flatMap((line) => line.split(' ')),
)

test('every lithology with an identifier points into the CGI vocabulary', () => {
  const units = [...(content.vocabularies.get('units')?.values() ?? [])]
  expect(units.filter(({ uri }) => uri !== undefined).length).toBeGreaterThan(30)
  for (const { id, uri } of units) {
    const [, concept] = uri?.split('http://resource.geosciml.org/classifier/cgi/lithology/') ?? []
    if (uri !== undefined) expect(CGI, id).toContain(concept)
  }
})

test('findGaps(content) counts figures from memory and labels that are missing', () => {
  const gaps = findGaps(content)
  expect(gaps.memory).toContain('memory-guidance#bs-5628-iii')
  expect(gaps.untranslated).toContain('methods/sand-slaked: fr de it pt')
  expect(gaps.unlinked).toContain('material lime-nhl2')
  expect(gaps.unsourced).toContain('lime-cl90.carbon')
})
