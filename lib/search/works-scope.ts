import type { CaseFilter } from '#lib/db/case-filter.ts'
import { LOST_TO_SIGHT_DAYS } from '#lib/evidence/index.ts'
import { addBit, type Bits, hasBit, newBits } from './bits.ts'
import type { Column, Columns } from './columns.ts'
import { now } from './current.ts'
import type { RecordSegment } from './record.ts'
import { caseIdsIn } from './sought.ts'
import { NONE, type WorkColumns, type WorkSet } from './works-columns.ts'
import { type KnownWorks, knownWorks } from './works-known.ts'

/** The works that figures are for. */
export interface Scope {
  readonly filter: CaseFilter
  /** Words that the cases must be found by, as the list of cases has them. */
  readonly text?: string
  /** Day (`YYYY-MM-DD`) that the figures are for. */
  readonly asOf: string
}

/** What a scope takes, to be counted at once: the columns change when something is published. */
export interface Selected {
  readonly works: WorkColumns
  readonly documents: Columns
  readonly withdrawn: KnownWorks['withdrawn']
  /** Rows of the works that tell of end points: those with a baseline and a later look. */
  readonly rows: Int32Array
  /** Rows of those that tell nothing. */
  readonly leftOut: Int32Array
  /** Cases that fit, disputed ones among them; and those alone. */
  readonly cases: number
  readonly disputedCases: number
  /** Day since 1970 that the figures are for. */
  readonly asOf: number
}

/** Facets that a work answers for itself, since a wall may carry several. */
const OF_WORK = {
  recipe: 'recipe',
  row: 'rows',
  family: 'family',
  binder: 'materials',
  method: 'method',
  use: 'use',
} as const satisfies { readonly [F in keyof CaseFilter]?: WorkSet }

/**
 * Selects the works of each scope in the record as it is now and tells of them. Disputed cases are never among them;
 * a choice of recipe, table row, family, binder, method or use is held against the work itself.
 *
 * @param tell counts at once and keeps none of the columns
 */
export const selectWorks = <T>(
  scopes: readonly Scope[],
  tell: (selected: readonly Selected[]) => T,
): Promise<T> =>
  now(async (record) => {
    const found: Found[] = []
    for (const scope of scopes) found.push(await findCases(record, scope))
    const works = await knownWorks(record.change)
    return tell(scopes.map((scope, k) => select(scope, found[k] as Found, record.columns, works)))
  })

/** {@link selectWorks} of one scope in a record as it stands. */
export const selectIn = async (scope: Scope, record: RecordSegment, works: KnownWorks): Promise<Selected> =>
  select(scope, await findCases(record, scope), record.columns, works)

interface Found {
  readonly cases: number
  readonly disputedCases: number
  /** The documents of those that nobody disputes. */
  readonly sound: Bits
}

async function findCases(record: RecordSegment, { filter, text }: Scope): Promise<Found> {
  const { disputed: _, ...rest } = filter
  const { columns } = record
  const ids = await caseIdsIn(record, { text, filter: rest })
  const { codes, sets } = columns.facets.disputed
  const isDisputed = sets.map((values) => values.includes('yes'))
  const sound = newBits(columns.size)
  let disputedCases = 0
  for (let i = 0; i < ids.length; i += 1) {
    const id = ids[i] as number
    if (isDisputed[codes[id] as number]) disputedCases += 1
    else addBit(sound, id)
  }
  return { cases: ids.length, disputedCases, sound }
}

function select(
  { filter, asOf }: Scope,
  { sound, ...counted }: Found,
  documents: Columns,
  { columns: works, withdrawn }: KnownWorks,
): Selected {
  const tests = Object.entries(OF_WORK).flatMap(([facet, name]) => {
    const chosen = filter[facet as keyof typeof OF_WORK]
    return chosen === undefined || chosen.length === 0 ? [] : [fitting(works.sets[name], chosen)]
  })
  const rows = new Int32Array(works.rows)
  const leftOut = new Int32Array(works.rows)
  let [kept, left] = [0, 0]
  const { document } = works.numbers
  const reason = works.codes.leftOut
  for (let row = 0; row < works.rows; row += 1) {
    const id = document[row] as number
    if (id === NONE || !hasBit(sound, id)) continue
    let fits = true
    for (const { codes, isChosen } of tests) if (isChosen[codes[row] as number] !== 1) fits = false
    if (!fits) continue
    if (reason[row] === 0) rows[kept++] = row
    else leftOut[left++] = row
  }
  return {
    ...counted,
    works,
    documents,
    withdrawn,
    rows: rows.subarray(0, kept),
    leftOut: leftOut.subarray(0, left),
    asOf: Date.parse(`${asOf}T00:00:00Z`) / 86_400_000,
  }
}

function fitting({ codes, sets }: Column, chosen: readonly string[]) {
  const wanted = new Set(chosen)
  return {
    codes,
    isChosen: Uint8Array.from(sets, (values) => (values.some((one) => wanted.has(one)) ? 1 : 0)),
  }
}

/** Tells of rows whether they are lost to sight: given up, or nobody has looked for {@link LOST_TO_SIGHT_DAYS}. */
export function lostAt({ works, asOf }: Pick<Selected, 'works' | 'asOf'>): (row: number) => boolean {
  const { lastOn } = works.numbers
  const { lastSeen } = works.codes
  const given = works.codeOf('lastSeen', true)
  return (row) =>
    lastSeen[row] === given || (lastOn[row] !== NONE && (lastOn[row] as number) < asOf - LOST_TO_SIGHT_DAYS)
}
