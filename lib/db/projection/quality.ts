import type { CaseBody } from '#lib/entry/case.ts'
import type { VisitIndexModel } from '../../../prisma/generated/models.ts'

/** How fully a case is recorded, as far as lists can be filtered by it. */
export function qualityOf(body: CaseBody, visits: readonly VisitIndexModel[], yearsWatched: number) {
  return {
    hasAnalysis: body.mortars.some(({ samples }) => samples.some(({ analysis }) => analysis !== 'none')),
    hasPhotos: visits.some(({ photos }) => photos > 0),
    secondObserver:
      visits.some(({ others }) => others.length > 0) ||
      body.works.some(({ id }) => isSeenByTwo(visits.filter(({ work }) => work === id))),
    pastFive: yearsWatched >= 5,
  }
}

const isSeenByTwo = (visits: readonly VisitIndexModel[]) =>
  new Set(visits.map(({ authorKey }) => authorKey)).size > 1
