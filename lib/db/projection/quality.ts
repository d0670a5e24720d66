import type { CaseBody } from '#lib/entry/case.ts'
import type { VisitIndexModel } from '../../../prisma/generated/models.ts'

/**
 * How fully a case is recorded, as far as lists can be filtered by it.
 *
 * @param byOthers the visits of another person than the case's authors
 */
export function qualityOf(
  body: CaseBody,
  visits: readonly VisitIndexModel[],
  yearsWatched: number,
  byOthers: ReadonlySet<string>,
) {
  return {
    hasAnalysis: body.mortars.some(({ samples }) => samples.some(({ analysis }) => analysis !== 'none')),
    hasPhotos: visits.some(({ photos }) => photos > 0),
    secondObserver: visits.some(({ entryId }) => byOthers.has(entryId)),
    pastFive: yearsWatched >= 5,
  }
}
