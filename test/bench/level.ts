import { type Clustered, fileRows, type GroupedRow, testBuildings } from '#lib/evidence/index.ts'
import { randomOf } from '#lib/evidence/random.ts'

/**
 * How often the test of great groups finds a difference where there is none, and where there is one: `npm run bench --
 * level [runs]`. Walls wear at a hazard that those of a building share in part; buildings are small and great; groups
 * are dealt to whole buildings, or to walls. Nothing is asserted; of 1,000 runs a level of 5 % lies within 1.4 %.
 */

const RUNS = Number(process.argv[2] ?? 1000)
const GRID_DAYS = 91
const random = randomOf(20261129)
const unit = () => (random(2 ** 31) + 0.5) / 2 ** 31

interface Scene {
  readonly buildings: number
  /** Walls of most buildings, and of one in ten. */
  readonly walls: readonly [few: number, many: number]
  /** Whether walls of a building share a hazard of their own, and belong to one group. */
  readonly shared: boolean
  readonly whole: boolean
  /** Share of the first group, and how many times faster it wears. */
  readonly first: number
  readonly faster: number
}

type Wall = Clustered & { readonly group: number }

function wallOf(cluster: number, group: number, hazardPerYear: number): Wall {
  const worn = (-Math.log(unit()) / hazardPerYear) * 365.25
  const last = (4 + 18 * unit()) * 365.25
  let from = 0
  for (;;) {
    const visit = from + (0.5 + 4.5 * unit()) * 365.25
    if (visit > last || visit >= worn) {
      const start = Math.floor(from / GRID_DAYS) * GRID_DAYS
      const end = visit > last ? null : Math.ceil(visit / GRID_DAYS) * GRID_DAYS
      return { cluster, group, from: start, to: end }
    }
    from = visit
  }
}

function draw({ buildings, walls, shared, whole, first, faster }: Scene): Wall[] {
  const groupOf = () => (unit() < first ? 0 : 1)
  return Array.from({ length: buildings }, (_, cluster) => {
    const own = shared ? -Math.log(unit()) : 1
    const group = groupOf()
    return Array.from({ length: walls[random(10) === 0 ? 1 : 0] }, () => {
      const mine = whole ? group : groupOf()
      return wallOf(cluster, mine, 0.05 * own * (mine === 0 ? faster : 1))
    })
  }).flat()
}

/** Equal walls of a building once; groups told apart as intervals of their own. */
function filed(walls: readonly Wall[]) {
  const parts = [0, 1].map((group) => walls.filter((wall) => wall.group === group))
  const places = new Map<string, number>()
  const rows: (GroupedRow & { weight: number })[] = []
  const placed = walls.map(({ group, from, to, cluster }) => {
    const key = `${group} ${from} ${to}`
    const place = places.get(key) ?? rows.push({ group, from, to, weight: 0 }) - 1
    places.set(key, place)
    const row = rows[place]
    if (row) rows[place] = { ...row, weight: row.weight + 1 }
    return { from: place, to: null, cluster }
  })
  // Filed by their places, which stand for the intervals.
  const { rows: known, clusters } = fileRows(placed)
  const row = clusters.row.map((at) => known[at]?.from ?? 0)
  return { file: { rows, clusters: { ...clusters, row } }, sizes: parts.map(({ length }) => length) }
}

const SCENES: Readonly<Record<string, Scene>> = {
  'walls apart, even groups': {
    buildings: 2500,
    walls: [1, 1],
    shared: false,
    whole: true,
    first: 0.5,
    faster: 1,
  },
  'one in ten in the first': {
    buildings: 2500,
    walls: [1, 1],
    shared: false,
    whole: true,
    first: 0.1,
    faster: 1,
  },
  'buildings share, whole': {
    buildings: 1200,
    walls: [1, 12],
    shared: true,
    whole: true,
    first: 0.3,
    faster: 1,
  },
  'buildings share, mixed': {
    buildings: 1200,
    walls: [1, 12],
    shared: true,
    whole: false,
    first: 0.3,
    faster: 1,
  },
  'few great buildings': {
    buildings: 120,
    walls: [20, 40],
    shared: true,
    whole: true,
    first: 0.5,
    faster: 1,
  },
  'a quarter faster': {
    buildings: 1200,
    walls: [1, 12],
    shared: true,
    whole: true,
    first: 0.3,
    faster: 1.25,
  },
}

for (const [name, scene] of Object.entries(SCENES)) {
  let [found, asIfApart] = [0, 0]
  for (let run = 0; run < RUNS; run++) {
    const walls = draw(scene)
    if ((testBuildings(filed(walls).file, ['a', 'b'])?.p ?? 1) < 0.05) found++
    const apart = walls.map((wall, k) => ({ ...wall, cluster: k }))
    if ((testBuildings(filed(apart).file, ['a', 'b'])?.p ?? 1) < 0.05) asIfApart++
  }
  const percent = (count: number) => `${((100 * count) / RUNS).toFixed(1)} %`.padStart(7)
  console.log(
    `${name.padEnd(26)} found by building ${percent(found)}, as if all walls were apart ${percent(asIfApart)}`,
  )
}
