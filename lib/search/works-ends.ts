import { COMPETING, type Competing, type EndPoint, type Filed } from '#lib/evidence/index.ts'
import { addBit, countBits, newBits } from './bits.ts'
import { NONE, type WorkColumns } from './works-columns.ts'
import { type Grain, Tally } from './works-grain.ts'
import { lostAt, type Selected } from './works-scope.ts'

/** Works that fared alike, in days since the baseline. */
export interface FateRow {
  readonly kind: 'reached' | 'watched' | 'competing'
  readonly from: number
  /** Null unless reached. */
  readonly to: number | null
  /** Last seen standing, and lost to sight since. */
  readonly lost: boolean
  readonly weight: number
}

/** Works to which the same thing came first, between which days; null: nothing yet. */
export interface CauseRow {
  readonly cause: EndPoint | Competing | null
  readonly from: number
  readonly to: number | null
  readonly weight: number
}

/** What looking at works told of one end point. */
export interface Watching {
  readonly works: number
  readonly walls: number
  /** Days from the baseline to the visit that saw it, or to the last one. */
  readonly watchedDays: number
}

/** The distinct intervals of the works in scope, with the buildings that they fall to. */
export interface Fates {
  readonly fates: Filed<FateRow>
  readonly causes: Filed<CauseRow>
  /** The works that the end point could come to, and that were looked at after their baseline. */
  readonly watching: Watching
  /** Works that had nothing left to worsen. */
  readonly impossible: number
}

/** Works of one group that fared alike. */
export interface GroupRow {
  /** Place of the group. */
  readonly group: number
  readonly from: number
  readonly to: number | null
  readonly weight: number
}

/** The distinct intervals of several groups of works, filed under the buildings of all of them. */
export function groupsOf(groups: readonly Selected[], endPoint: EndPoint, grain: Grain): Filed<GroupRow> {
  const tally = new Tally(grain)
  for (const [group, { works, rows }] of groups.entries()) {
    const { building } = works.numbers
    const read = readerOf(works, endPoint)
    for (let i = 0; i < rows.length; i += 1) {
      const row = rows[i] as number
      const { kind, from, to } = read(row)
      if (kind >= 0) tally.add(building[row] as number, group, from, to)
    }
  }
  return tally.filed((group, from, to, weight) => ({ group, from, to, weight }))
}

const KINDS = ['reached', 'watched', 'competing'] as const
/** Watched and lost to sight, beside the kinds. */
const LOST = KINDS.length

/** Adds up what became of the works in scope, in one pass. */
export function fatesOf(selected: Selected, endPoint: EndPoint, grain: Grain): Fates {
  const { works, documents, rows } = selected
  const { document, building } = works.numbers
  const isLost = lostAt(selected)
  const read = readerOf(works, endPoint)
  const fates = new Tally(grain)
  const causes = new Tally(grain)
  const walls = newBits(documents.size)
  let [impossible, watched, watchedDays] = [0, 0, 0]
  for (let i = 0; i < rows.length; i += 1) {
    const row = rows[i] as number
    const { kind, from, to, how, howFrom, howTo } = read(row)
    if (kind < 0) {
      impossible += 1
      continue
    }
    const own = building[row] as number
    fates.add(own, kind === WATCHED && isLost(row) ? LOST : kind, from, to)
    if (kind === COMPETES) causes.add(own, how, howFrom, howTo)
    else causes.add(own, kind === REACHED ? CAUSES.length - 1 : CAUSES.length, from, to)
    if (from === 0 && to === NONE) continue
    watched += 1
    watchedDays += to === NONE ? from : to
    addBit(walls, document[row] as number)
  }
  return {
    fates: fates.filed((kind, from, to, weight) => ({
      ...{ kind: KINDS[kind] ?? 'watched', from, to, weight },
      lost: kind === LOST,
    })),
    causes: causes.filed((kind, from, to, weight) => ({
      ...{ cause: kind === CAUSES.length - 1 ? endPoint : (COMPETING[kind] ?? null), from, to, weight },
    })),
    watching: { works: watched, walls: countBits(walls), watchedDays },
    impossible,
  }
}

const [REACHED, WATCHED, COMPETES] = [0, 1, 2]
/** All that competes, then the end point itself. */
const CAUSES = [...COMPETING, 'itself'] as const

/** What the columns tell of one end point and work; `kind` is below 0 where it could not come to it. */
interface Told {
  kind: number
  from: number
  to: number
  /** Place in {@link COMPETING} of what came first. */
  how: number
  howFrom: number
  howTo: number
}

/** @returns a reader of rows, which tells of each in the same object */
function readerOf(works: WorkColumns, endPoint: EndPoint): (row: number) => Told {
  const told: Told = { kind: 0, from: 0, to: NONE, how: 0, howFrom: NONE, howTo: NONE }
  const kinds = Int8Array.from({ length: 256 }, (_, code) => KINDS.indexOf(wordAt(works, 'unitFate', code)))
  const name = endPoint === 'unit-damaged' ? 'unit' : endPoint === 'joint-worse' ? 'joint' : 'loss'
  const kindOf = Int8Array.from(kinds, (_, code) => KINDS.indexOf(wordAt(works, `${name}Fate`, code)))
  const hows = Int8Array.from(kinds, (_, code) => COMPETING.indexOf(wordAt(works, 'endHow', code)))
  const { endFrom, endTo, [`${name}From` as const]: froms, [`${name}To` as const]: tos } = works.numbers
  const { endHow, [`${name}Fate` as const]: fate, lossDamaged } = works.codes
  // The joint's loss is kept once, with the kind it was of: the other kind competes with this one.
  const damaged = endPoint === 'joint-lost-unit-damaged'
  const otherKind = name === 'loss' ? works.codeOf('lossDamaged', !damaged) : -1
  const otherHow = COMPETING.indexOf(damaged ? 'joint-lost-unit-sound' : 'joint-lost-unit-damaged')
  return (row) => {
    told.from = froms[row] as number
    if (lossDamaged[row] === otherKind) {
      told.kind = COMPETES
      told.to = NONE
      told.how = otherHow
      told.howFrom = told.from
      told.howTo = tos[row] as number
      return told
    }
    told.kind = kindOf[fate[row] as number] as number
    told.to = told.kind === REACHED ? (tos[row] as number) : NONE
    if (told.kind === COMPETES) {
      told.how = hows[endHow[row] as number] as number
      told.howFrom = endFrom[row] as number
      told.howTo = endTo[row] as number
    }
    return told
  }
}

const wordAt = (works: WorkColumns, name: 'unitFate' | 'jointFate' | 'lossFate' | 'endHow', code: number) =>
  works.wordOf(name, code) as never

/** Until walls damp at their baseline were found dry, or dry ones damp again, in days. */
export interface WeatherRow {
  readonly from: number
  readonly to: number | null
  readonly weight: number
}

/** How long drying took, and staying dry, on the works in scope. */
export function weatherOf(
  { works, rows }: Selected,
  grain: Grain,
): { dry: Filed<WeatherRow>; again: Filed<WeatherRow> } {
  const of = (name: 'dry' | 'again'): Filed<WeatherRow> => {
    const { building, [`${name}From` as const]: froms, [`${name}To` as const]: tos } = works.numbers
    const tally = new Tally(grain)
    for (let i = 0; i < rows.length; i += 1) {
      const row = rows[i] as number
      const from = froms[row] as number
      if (from !== NONE) tally.add(building[row] as number, 0, from, tos[row] as number)
    }
    return tally.filed((_, from, to, weight) => ({ from, to, weight }))
  }
  return { dry: of('dry'), again: of('again') }
}
