import { beforeAll, describe, expect, it } from 'vitest'
import { droppingWords, findAll } from '#lib/search/index.ts'
import { loadDemo } from '#lib/workflow/load-demo.ts'

/**
 * What people type and what must be among the first results, over the demo and all of content: plurals, other
 * forms, slips, other names, other languages, phrases. Nobody's memory of a ranking: each answer is the page that
 * the words name.
 */
const EXPECTED: readonly (readonly [typed: string, ...expected: string[]])[] = [
  // Other languages and old words.
  ['kalkmörtel', 'term lime-mortar'],
  ['Kalkmoertel', 'term lime-mortar'],
  ['mortier de chaux', 'term lime-mortar'],
  ['mortero de cal', 'term lime-mortar'],
  ['malta di calce', 'term lime-mortar'],
  ['argamassa de cal', 'term lime-mortar'],
  ['chaux vive', 'term quicklime'],
  ['cal viva', 'term quicklime'],
  ['surkhi', 'material brick-dust', 'recipe brick-dust-mortar-damp-places'],
  ['Ziegelmehl', 'material brick-dust', 'recipe brick-dust-mortar-damp-places'],
  ['tuileau', 'material brick-dust'],
  ['testa contusa', 'material brick-dust'],
  ['Kalkstein', 'unit limestone'],
  ['calcaire', 'unit limestone'],
  ['caliza', 'unit limestone'],
  ['granito', 'unit granite', 'case penhas-da-urze-bridge'],
  ['pisé', 'unit rammed-earth', 'recipe cement-render-over-earth'],
  ['taipa', 'unit rammed-earth'],
  ['Lehm', 'unit earth'],
  ['badigeon', 'term limewash', 'recipe hot-limewash'],
  ['yeso', 'material gypsum-plaster'],
  ['Ausblühung', 'term efflorescence'],
  ['ausbluhung', 'term efflorescence'],
  ['lubjakivi', 'unit limestone'],
  ['paekivi', 'unit limestone'],
  ['liivakivi', 'unit sandstone'],
  ['telliskivi', 'unit brick'],
  ['lubimört', 'term lime-mortar'],
  ['krohv', 'term plaster'],
  ['apnenec', 'unit limestone'],
  ['pescenjak', 'unit sandstone'],
  ['apnena malta', 'term lime-mortar'],
  ['omet', 'term plaster'],
  ['Sumpfkalk', 'vocabulary methods#putty', 'term putty'],
  ['Löschkalk', 'term dry-hydrate'],
  ['grès', 'unit sandstone'],
  ['chaux grasse', 'term fat-lime', 'material lime-fat'],
  ['arenisca', 'unit sandstone'],
  ['xisto', 'unit schist', 'case xistal-field-terrace'],
  // Plurals and other forms.
  ['limestones', 'unit limestone'],
  ['sandstones', 'unit sandstone'],
  ['hydraulic limes', 'term hydraulic-lime'],
  ['cob walls', 'unit cob'],
  ['hot-mixed', 'term hot-mix', 'guide hot-mixed-sand-slaked-putty'],
  ['bulked', 'term bulking'],
  ['sieves', 'term sieve'],
  ['repointed', 'term repointing'],
  ['air limes', 'term air-lime', 'vocabulary families#air-lime'],
  ['pozzolanic limes', 'vocabulary families#pozzolanic-lime'],
  ['natural cements', 'term natural-cement', 'vocabulary families#natural-cement'],
  ['quartzites', 'unit quartzite'],
  // Slips, accents left out, words run together or apart.
  ['limstone', 'unit limestone'],
  ['sandstoen', 'unit sandstone'],
  ['ponting', 'term pointing'],
  ['efflorecence', 'term efflorescence'],
  ['carbonaton', 'term carbonation'],
  ['limewahs', 'term limewash'],
  ['hydralic lime', 'term hydraulic-lime'],
  ['pozolana', 'material pozzolana'],
  ['quick lime', 'term quicklime'],
  ['lime wash', 'term limewash', 'recipe hot-limewash'],
  ['lime-wash', 'term limewash'],
  ['hydrolic lime', 'term hydraulic-lime', 'vocabulary families#hydraulic-lime'],
  ['pozolanic lime', 'vocabulary families#pozzolanic-lime'],
  ['grannite', 'unit granite'],
  ['shist', 'unit schist'],
  ['travertin', 'unit travertine'],
  ['conglomorate', 'unit conglomerate'],
  ['brickdust', 'term brick-dust', 'material brick-dust'],
  ['mudbrick', 'unit adobe'],
  ['tuckpointing', 'term tuck-pointing'],
  ['hotmix', 'term hot-mix'],
  ['limecrete', 'vocabulary uses#concrete'],
  ['half timbered', 'vocabulary wall-types#framed-infill'],
  ['spalling', 'term scaling'],
  ['NHL5', 'material lime-nhl5'],
  ['nhl3.5', 'material lime-nhl35'],
  ['CL90', 'material lime-cl90'],
  // Things by their names.
  ['brick dust', 'term brick-dust', 'material brick-dust', 'recipe brick-dust-mortar-damp-places'],
  ['oolitic limestone', 'unit oolite'],
  ['trass', 'term trass', 'material trass'],
  ['goat hair', 'material hair-goat', 'caution old-hair-anthrax'],
  ['roman cement', 'term natural-cement'],
  ['rising damp', 'term rising-damp'],
  ['frost damage', 'term frost-damage'],
  ['galleting', 'term galleting'],
  ['silica dust', 'caution silica-dust'],
  ['lead paint', 'caution lead-paint'],
  ['vitruvius', 'table vitruvius-mortar'],
  ['palladio', 'table palladio-mortar'],
  // Walls and mortars of the record.
  ['churchyard wall', 'case loigusalu-churchyard-wall'],
  ['fieldstone barn', 'case vahtrakonnu-barn-gable'],
  ['jetty', 'case muttonbird-reach-jetty-wall', 'case nine-posts-store'],
  ['windmill', 'case paenogese-windmill-stump'],
  ['pointing sandstone salts', 'case quollbrook-barn'],
  ['cistern Portugal', 'case alfarrobinha-velha-cistern'],
  ['"hot lime"', 'recipe hot-lime-for-rubble'],
  ['lime putty pointing', 'recipe putty-and-sharp-sand-pointing'],
  ['sand-slaked barn', 'recipe sand-slaked-barn-mortar'],
]

beforeAll(async () => {
  await loadDemo()
})

const pages = async (text: string, limit = 6) =>
  (await findAll({ text, limit })).results.map(({ kind, id }) => `${kind} ${id}`)

describe('findAll(text)', () => {
  it('is asked at least sixty questions', () => {
    expect(EXPECTED.length).toBeGreaterThanOrEqual(60)
  })

  it.each(EXPECTED)('finds for %s %s among the first', async (typed, ...expected) => {
    expect(await pages(typed)).toEqual(expect.arrayContaining([...expected]))
  })

  it('puts the page that has the very name first', async () => {
    for (const [typed, first] of [
      ['Limestone', 'unit limestone'],
      ['Hot lime for rubble', 'recipe hot-lime-for-rubble'],
      ['Sand: voids, bulking, sieve', 'guide sand'],
    ] as const)
      expect((await pages(typed))[0]).toBe(first)
  })

  it('keeps a phrase together and leaves out what is excluded', async () => {
    const all = await findAll({ text: 'hot lime' })
    const phrase = await findAll({ text: '"hot lime"' })
    expect(phrase.total).toBeLessThan(all.total)
    const without = await findAll({ text: 'chalk -flint' })
    const both = await findAll({ text: 'chalk flint' })
    expect(without.total + both.total).toBe((await findAll({ text: 'chalk' })).total)
    expect(without.read.excluded).toEqual(['flint'])
    expect((await findAll({ text: 'lime -"hot lime"' })).total).toBeLessThan(
      (await findAll({ text: 'lime' })).total,
    )
  })

  it('says what each part was found by, how and where', async () => {
    const { results, read } = await findAll({ text: 'limstone cocciopesto', kind: 'case' })
    expect(read.corrected).toEqual([{ typed: 'limstone', how: 'spelling', to: 'limestone' }])
    expect(results.length).toBeGreaterThan(0)
    for (const { why } of results) {
      expect(why.map(({ typed }) => typed)).toEqual(['limstone', 'cocciopesto'])
      expect(why[1]).toMatchObject({ how: 'other-name', matched: 'Brick dust' })
    }
    const [first] = (await findAll({ text: 'charcoal' })).results
    const marked = first?.why[0]?.excerpt
      ?.filter((piece) => piece.marked)
      .map(({ text }) => text.toLowerCase())
    expect(marked).toContain('charcoal')
  })

  it('says which one word to leave out where nothing has all of them', async () => {
    const text = 'mortar falling flint'
    expect((await findAll({ text })).total).toBe(0)
    const dropped = await droppingWords({ text })
    expect(dropped.length).toBeGreaterThan(0)
    for (const { value, brings } of dropped) {
      const rest = text.split(' ').filter((word) => word !== value)
      expect((await findAll({ text: rest.join(' ') })).total).toBe(brings)
    }
    expect(await droppingWords({ text: 'zyzzyva' })).toEqual([])
  })

  it('counts each kind whichever is asked for', async () => {
    const all = await findAll({ text: 'lime' })
    const sum = Object.values(all.counts).reduce((total, count) => total + count, 0)
    expect(sum).toBe(all.total)
    const rows = await findAll({ text: 'lime', kind: 'row' })
    expect(rows.total).toBe(all.counts.row)
    expect(rows.counts).toEqual(all.counts)
    expect(rows.results.every(({ kind }) => kind === 'row')).toBe(true)
  })

  it('gives every page once over its pages', async () => {
    const seen: string[] = []
    for (let after: string | undefined; ; ) {
      const page = await findAll({ text: 'lime', after, limit: 17 })
      seen.push(...page.results.map(({ kind, id }) => `${kind} ${id}`))
      if (page.next === null) break
      after = page.next
    }
    expect(new Set(seen).size).toBe(seen.length)
    expect(seen.length).toBe((await findAll({ text: 'lime' })).total)
  })
})
