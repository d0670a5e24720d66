import type { CaseFilter } from '#lib/db/case-filter.ts'
import type { EndPoint, Steps } from '#lib/evidence/index.ts'
import {
  type Fates,
  fatesOf,
  type Reports,
  reportsOf,
  type Scope,
  type Selected,
  type SetAside,
  type SharedVisit,
  type Size,
  type StateCount,
  selectWorks,
  setAsideOf,
  sharedVisitsOf,
  sizeOf,
  statesOf,
  weatherOf,
} from '#lib/search/works.ts'
import { type Agreements, agreementOf } from './evidence-agree.ts'
import { type Drying, dryingSteps } from './evidence-drying.ts'
import { type EndPointFigures, endPointSteps, grainFor } from './evidence-figures.ts'
import { keptAnswer } from './evidence-kept.ts'
import { inTurns } from './evidence-turns.ts'

/** Everything that the record shows about some walls. */
export interface Evidence extends Reports {
  readonly size: Size
  readonly setAside: SetAside
  readonly states: readonly StateCount[]
  /** Until walls damp at the finish were found dry, and until dry ones were found damp again. */
  readonly drying: { readonly dry: Drying; readonly again: Drying }
  readonly agreement: Agreements
  readonly endPoints: readonly EndPointFigures[]
  /** Cases that fit, those that tell too little to be counted and disputed ones among them. */
  readonly cases: number
}

/** The cases of a filter, and of words where there are any, as figures are worked out for them today. */
export const scopeOf = (filter: CaseFilter, text = ''): Scope => ({
  filter,
  ...(text !== '' && { text }),
  asOf: new Date().toISOString().slice(0, 10),
})

/**
 * Whether walls are chosen by what became of them, by how long they were watched, or by words, which may tell of
 * either: curves then say how they were chosen rather than how walls fare.
 */
export const choosesByOutcome = (
  { joint, unitState, damp, quality, minYears, maxYears }: CaseFilter,
  text = '',
): boolean =>
  text !== '' ||
  [joint, unitState, damp].some((values) => values !== undefined && values.length > 0) ||
  quality?.includes('past-five') === true ||
  minYears !== undefined ||
  maxYears !== undefined

/** The figures for the works that a filter finds, with the end points asked for. */
export const readEvidence = (scope: Scope, endPoints: readonly EndPoint[]): Promise<Evidence> =>
  keptAnswer(['evidence', scope, endPoints], async () => {
    const gathered = await selectWorks([scope], (selected) =>
      gatherEvidence(selected[0] as Selected, endPoints),
    )
    return inTurns(evidenceSteps(gathered))
  })

/** What was counted, to be estimated from. */
interface Gathered {
  readonly counted: Omit<Evidence, 'drying' | 'agreement' | 'endPoints'>
  readonly shared: readonly SharedVisit[]
  readonly weather: ReturnType<typeof weatherOf>
  readonly fates: readonly { readonly endPoint: EndPoint; readonly fates: Fates }[]
}

/** Counts all that figures are estimated from. */
export function gatherEvidence(selected: Selected, endPoints: readonly EndPoint[]): Gathered {
  const size = sizeOf(selected)
  const grain = grainFor(size.works)
  return {
    counted: {
      ...{ size, ...reportsOf(selected), cases: selected.cases },
      ...{ setAside: setAsideOf(selected), states: statesOf(selected) },
    },
    shared: sharedVisitsOf(selected),
    weather: weatherOf(selected, grain),
    fates: endPoints.map((endPoint) => ({ endPoint, fates: fatesOf(selected, endPoint, grain) })),
  }
}

function* evidenceSteps({ counted, shared, weather, fates }: Gathered): Steps<Evidence> {
  const draws = grainFor(counted.size.works)
  const endPoints: EndPointFigures[] = []
  for (const { endPoint, fates: own } of fates) endPoints.push(yield* endPointSteps(endPoint, own, draws))
  return {
    ...counted,
    drying: {
      dry: yield* dryingSteps(weather.dry, draws.resamples),
      again: yield* dryingSteps(weather.again, draws.resamples),
    },
    agreement: agreementOf(shared),
    endPoints,
  }
}
