import { uniformInt } from 'pure-rand/distribution/uniformInt'
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus'
import { caseFacets, documentRow, mortarMarks, type SearchRow } from '#lib/db/projection/search.ts'
import type { CaseBody } from '#lib/entry/case.ts'
import { facetLine } from '#lib/entry/facets.ts'
import { mark, type SearchText, searchTextOf } from '#lib/entry/search-text.ts'
import {
  ASPECTS,
  DAMP_STATES,
  DRIVING_RAIN,
  FROST,
  GROUND,
  JOINT_STATES,
  SALTS,
  SEASONS,
  STRUCTURES,
  UNIT_STATES,
  USES,
  type Use,
  WALL_TYPES,
} from '#lib/entry/terms.ts'
import { lexemesOf, spelledWords } from '#lib/entry/words.ts'
import type { CaseIndexModel, VisitIndexModel } from '../../prisma/generated/models.ts'

/** One made-up case as the projections hold it. */
export interface GeneratedCase {
  readonly row: CaseIndexModel
  readonly body: CaseBody
  readonly document: SearchRow
  readonly visits: readonly VisitIndexModel[]
  readonly lexemes: readonly string[]
  readonly words: readonly string[]
}

/**
 * Made-up cases, the same for the same seed: a few countries, stones and uses are common and many are rare; most
 * walls were visited once or twice and some for decades; most joints stand and some are lost. Words are the
 * trade's, about as often as in the demo's records, and place names that occur once or a few times.
 */
export function* generateCases(count: number, seed = 1): Generator<GeneratedCase> {
  const random = xoroshiro128plus(seed)
  const below = (end: number) => uniformInt(random, 0, end - 1)
  const chance = (percent: number) => below(100) < percent
  /** The first items of a list are drawn far more often than the last. */
  const skewed = <T>(list: readonly T[]): T =>
    list[Math.floor(list.length * (below(1000) / 1000) ** 2.2)] as T
  const some = <T>(list: readonly T[], most: number): T[] => [
    ...new Set(Array.from({ length: 1 + Math.floor(most * (below(1000) / 1000) ** 3) }, () => skewed(list))),
  ]
  const place = () => {
    const name = Array.from({ length: 2 + below(2) }, () => SYLLABLES[below(SYLLABLES.length)]).join('')
    return name.charAt(0).toUpperCase() + name.slice(1)
  }
  const sentence = () =>
    skewed(SENTENCES).replace(/\{(\w+)\}/g, (_, slot: string) =>
      slot === 'place' ? place() : skewed(SLOTS[slot as keyof typeof SLOTS]),
    )
  const texts: Text[] = []
  for (let n = 1; n <= count; n += 1) {
    // Beyond so many walls their words come again, with other weather, mortar and years: words follow the same law.
    const text = n <= TEXTS ? makeText() : texts[below(TEXTS)]
    if (text === undefined) throw new RangeError('No text was made.')
    if (n <= TEXTS) texts.push(text)
    yield makeCase(n, text)
  }

  function makeText(): Text {
    const country = skewed(COUNTRIES)
    const units = some(UNITS, 3)
    const name = place()
    const structure = skewed(STRUCTURES)
    const started = 1975 + Math.floor(50 * (below(1000) / 1000) ** 0.6)
    const body: CaseBody = {
      title: `${name}, ${structure.replaceAll('-', ' ')} of ${units[0]?.replaceAll('-', ' ')}`,
      summary: [sentence(), sentence()].join(' '),
      place: {
        country: country.id,
        region: skewed(country.regions),
        locality: name,
        ...(chance(80) && {
          latitude: Math.round((country.north + below(30) / 10) * 10) / 10,
          longitude: Math.round((country.east + below(40) / 10) * 10) / 10,
        }),
      },
      structure: { type: structure },
      fabric: {
        units: units.map((unit) => ({ unit, ...(chance(30) && { note: sentence() }) })),
        wall: skewed(WALL_TYPES),
      },
      mortars: chance(60) ? [{ id: 'found', where: 'Bed joints', description: sentence(), samples: [] }] : [],
      exposure: { drivingRain: 'severe', frost: 'none', salts: [], ground: 'free-draining', aspect: 'all' },
      earlier: chance(30) ? [{ what: sentence() }] : [],
      works: some(USES.slice(0, 12) as Use[], 3).map((use, i) => ({
        ...{ id: `w${i}`, title: sentence(), use, started: String(started), finished: String(started) },
        weather: sentence(),
      })),
      interests: 'none',
      recordedOn: '2026-01-01',
      invented: true,
    }
    const seen = Array.from({ length: below(4) }, sentence)
    const made = searchTextOf('case', body)
    const words = {
      title: made.title,
      summary: made.summary,
      body: [made.body, ...seen].join('\n'),
      marks: [],
    }
    const base = documentRow('case', { entryId: '', slug: '', publishedAt: new Date(0) }, made, { seen })
    return { body, made, base, lexemes: [...lexemesOf(words)], words: [...spelledWords(words)] }
  }

  function makeCase(n: number, { body: told, made, base, lexemes, words }: Text): GeneratedCase {
    const body: CaseBody = {
      ...told,
      exposure: {
        drivingRain: skewed(DRIVING_RAIN),
        frost: skewed(FROST),
        salts: chance(40) ? some(SALTS, 3) : [],
        ground: skewed(GROUND),
        aspect: skewed(ASPECTS),
      },
    }
    const [entryId, slug] = [uuidOf(n), `case-${n}`]
    const publishedAt = new Date(Date.UTC(2026, 0, 1) + n * 60_000)
    const visits = makeVisits(n, Number(body.works[0]?.started))
    const row = makeRow(body, visits, { entryId, slug, publishedAt })
    const { drivingRain, frost, salts, ground } = body.exposure
    const document: SearchRow = {
      ...{ ...base, entryId, slug, publishedAt },
      marks: [...made.marks, ...salts.map((salt) => mark('salt', salt)), ...mortarMarks(row)].sort(),
      facets: facetLine({
        ...{ kind: ['case'], ...made.facets, ...caseFacets(row) },
        ...{ rain: [drivingRain], frost: [frost], salt: salts, ground: [ground] },
      }),
      ...{ years: row.yearsWatched, latitude: row.latitude, longitude: row.longitude },
    }
    return { row, body, document, visits, lexemes: [...lexemes, ...document.marks], words }
  }

  function makeVisits(n: number, started: number): VisitIndexModel[] {
    const visited = chance(18) ? 0 : 1 + Math.floor(8 * (below(1000) / 1000) ** 3)
    return Array.from({ length: visited }, (_, i): VisitIndexModel => {
      const days = Math.floor(((i + 1) / visited) ** 1.5 * below(9000))
      return {
        ...{ entryId: uuidOf(100_000_000 + n * 10 + i), slug: `case-${n}-v${i}`, revision: 1 },
        ...{ caseEntryId: uuidOf(n), work: 'w0', baseline: i === 0 },
        on: new Date(Date.UTC(started, 5, 1) + days * 86_400_000),
        ...{ joint: skewed(JOINT_STATES), unit: skewed(UNIT_STATES), damp: skewed(DAMP_STATES) },
        ...{ season: skewed(SEASONS), daysSinceRain: null, authorKey: 'made-up', invented: true },
        ...{ observer: 'did-the-work', others: [], photos: 0 },
      }
    }).sort((a, b) => a.on.getTime() - b.on.getTime())
  }

  function makeRow(
    { title, summary, place, fabric, works, structure, exposure }: CaseBody,
    visits: readonly VisitIndexModel[],
    entry: Pick<CaseIndexModel, 'entryId' | 'slug' | 'publishedAt'>,
  ): CaseIndexModel {
    const [first, latest] = [visits[0], visits.at(-1)]
    const days = first && latest ? (latest.on.getTime() - first.on.getTime()) / 86_400_000 : -1
    const { family, method, slug, rows, materials } = skewed(RECIPES)
    return {
      ...{ ...entry, revision: 1, title, summary, country: place.country, region: place.region },
      ...{ units: fabric.units.map(({ unit }) => unit).sort(), wall: fabric.wall },
      ...{ uses: works.map(({ use }) => use).sort(), invented: true, visits: visits.length },
      yearsWatched: days < 0 ? -1 : Math.round((days / 365.25) * 100) / 100,
      ...{ latestOn: latest?.on ?? null, latestJoint: latest?.joint ?? null },
      ...{ latestUnit: latest?.unit ?? null, latestDamp: latest?.damp ?? null },
      ...{ structure: structure.type, drivingRain: exposure.drivingRain, frost: exposure.frost },
      ...{ ground: exposure.ground, salts: [...exposure.salts].sort() },
      ...{ latitude: place.latitude ?? null, longitude: place.longitude ?? null },
      ...{ families: [family], methods: [method], recipes: [slug], rows, materials, disputed: chance(2) },
      ...{ hasAnalysis: chance(12), hasPhotos: chance(35), secondObserver: chance(10) },
      pastFive: days > 1826,
    }
  }
}

/** So many walls have words of their own. */
const TEXTS = 30_000

/** A wall's words, with what finds them. */
interface Text {
  readonly body: CaseBody
  readonly made: SearchText
  readonly base: SearchRow
  readonly lexemes: readonly string[]
  readonly words: readonly string[]
}

const uuidOf = (n: number) => `00000000-0000-7000-8000-${n.toString(16).padStart(12, '0')}`

const SYLLABLES = (
  'ba ko lu mer sa vi tor nel pa rin du fa gol hi ja ke lo ma no pe qui ro si ta u ve wa ya ze bran cle dro fel gri ' +
  'hol jas kri lan mol nir ost pli ras sten tul urm vol wes'
).split(' ')

const SYLLABLE_NAMES = Array.from(
  { length: 40 },
  (_, n) => `${SYLLABLES[n]}${SYLLABLES[(n * 5 + 3) % SYLLABLES.length]}`,
)

/** Codes of countries that are not in the demo, with a corner of each on the ground. Regions are made up. */
const COUNTRIES = [
  ['EE', 57.6, 22],
  ['SI', 45.5, 13.5],
  ['PT', 37, -9],
  ['AU', -43, 145],
  ['FR', 43, 0],
  ['GB', 51, -4],
  ['DE', 48, 8],
  ['IT', 42, 11],
  ['ES', 38, -5],
  ['IE', 52, -9],
  ['SE', 57, 13],
  ['PL', 50, 18],
  ['US', 38, -90],
  ['CA', 45, -75],
  ['NZ', -42, 171],
  ['IN', 22, 77],
].map(([id, north, east], n) => ({
  id: String(id),
  north: Number(north),
  east: Number(east),
  regions: Array.from(
    { length: 4 + ((n * 7) % 15) },
    (_, i) => `${'North,South,East,West,Upper,Lower'.split(',')[i % 6]} ${SYLLABLE_NAMES[(n * 3 + i) % 40]}`,
  ),
}))

const UNITS = [
  'limestone',
  'brick-handmade',
  'granite',
  'sandstone',
  'fieldstone',
  'brick',
  'schist',
  'calcareous-sandstone',
  'dolostone',
  'oolite',
  'slate',
  'basalt',
  'cob',
  'rammed-earth',
  'chalk',
  'flint',
  'conglomerate',
  'tuff',
  'gneiss',
  'dolerite',
  'adobe',
  'brick-rubbed',
  'travertine',
  'clayey-sandstone',
  'quartzite',
  'marble',
  'daub',
  'trachyte',
]

const FAMILY_METHODS = [
  ['air-lime', 'putty', 'lime-fat'],
  ['hydraulic-lime', 'bagged-hydraulic', 'lime-nhl35'],
  ['air-lime', 'hot-mixed-used-hot', 'lime-fat'],
  ['pozzolanic-lime', 'putty', 'brick-dust'],
  ['earth', 'earth-wet-mixed', 'earth-clayey'],
  ['earth-lime', 'earth-wet-mixed', 'earth-loam'],
  ['cement-lime', 'not-stated', 'lime-cl90'],
  ['gypsum-lime', 'not-stated', 'gypsum-plaster'],
] as const

const RECIPES = Array.from({ length: 400 }, (_, n) => {
  const [family, method, binder] = FAMILY_METHODS[n % FAMILY_METHODS.length] ?? FAMILY_METHODS[0]
  return {
    slug: `recipe-${n}`,
    family,
    method,
    materials: [binder, n % 3 === 0 ? 'sand-pit' : 'sand-sharp'].sort(),
    rows: n % 2 === 0 ? [`table-${n % 30}#row-${n % 7}`] : [],
  }
})

const SLOTS = {
  state:
    'sound,worn at the arrises,open in the upper courses,soft,wet to the knee,dry behind,friable,tight'.split(
      ',',
    ),
  stuff:
    'putty,pit sand,sharp sand,hot lime,clay,brick dust,coarse grit,hair,quicklime,hydraulic lime,trass'.split(
      ',',
    ),
  where: 'north gable,south face,plinth,chimney,window head,buttress,parapet,quoin,cellar,rampart'.split(','),
  trouble:
    'salt crust,frost,driving rain,a leaking gutter,cement pointing,ivy,settlement,spalling,efflorescence,rising damp'.split(
      ',',
    ),
  act: 'repointed,packed,raked out,rebuilt,limewashed,tended under sacking,sprayed,left alone,consolidated,grouted'.split(
    ',',
  ),
}

/** Common ones first. */
const SENTENCES = [
  'The wall is {state} and the joints were {act} with {stuff}.',
  'Mortar of {stuff} and {stuff}, {state} at the {where}.',
  '{place} farm: the {where} suffered from {trouble}.',
  'The {where} was {act} after {trouble} opened the joints.',
  'The mason {act} it in dry weather and covered the {where} for a fortnight.',
  'Old lime mortar with {stuff} came away by hand at the {where}.',
  'Seen after rain: {state}, with {trouble} below the {where}.',
  'We {act} the {where} with a mix of {stuff}, three to one.',
  'The owner of {place} says that {trouble} has stopped since.',
  'Nothing was done at the {where}; the stone is {state}.',
  'Carried from the kiln at {place}, slaked in a pit, {act} in spring.',
  'A sample from {place} showed {stuff} and a little charcoal.',
  'Scaffold came down in October; the {where} was {state}.',
  'The apprentice noted {trouble} on the {where} near {place}.',
  'Pinned with slate galleting where {stuff} had washed out.',
  'Capillary rise measured with a tube at {place}: {state}.',
]
