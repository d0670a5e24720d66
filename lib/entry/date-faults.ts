import type { FieldFault } from '#lib/errors.ts'
import { firstDayOf, lastDayOf } from './dates.ts'
import { day, partialDate } from './fields.ts'

/** The dates of a case as far as they are given: what is still being written may hold any text. */
interface DatedCase {
  readonly structure?: { readonly century?: number | undefined }
  readonly earlier?: readonly { readonly when?: string | undefined }[]
  readonly works?: readonly DatedWork[]
  readonly recordedOn?: string | undefined
}
interface DatedWork {
  readonly id?: string | undefined
  readonly started?: string | undefined
  readonly finished?: string | undefined
  readonly ended?: { readonly on?: string | undefined } | undefined
}
interface DatedVisit {
  readonly on?: string | undefined
  readonly work?: string | undefined
  readonly photos?: readonly { readonly takenOn?: string | undefined }[] | undefined
}

type Dated = readonly [field: string, date: string]

/**
 * Dates of a case that cannot all be right: still to come, or before what they follow on. Of dates of which only the
 * year or the month is known, those are let pass that can be right.
 *
 * @param today `YYYY-MM-DD`
 */
export function caseDateFaults(body: DatedCase, today: string): FieldFault[] {
  const { works = [], earlier = [] } = body
  const begun = works.flatMap((work, i) => dated(`works.${i}.started`, work.started))
  const finished = works.flatMap((work, i) => dated(`works.${i}.finished`, work.finished))
  const ended = works.flatMap((work, i) => dated(`works.${i}.ended.on`, work.ended?.on))
  const before = earlier.flatMap((one, i) => dated(`earlier.${i}.when`, one.when))
  const recorded = dated('recordedOn', body.recordedOn)
  const standing = firstYearOf(body.structure?.century)
  const future = [...begun, ...finished, ...ended, ...before, ...recorded].flatMap((date) =>
    isAfter(date[1], today) ? [fault(date, 'in-the-future')] : [],
  )
  return [
    ...future,
    ...works.flatMap((work, i) => [
      ...follows(dated(`works.${i}.finished`, work.finished), work.started, 'before-begun'),
      ...follows(dated(`works.${i}.ended.on`, work.ended?.on), work.finished, 'before-finished'),
    ]),
    ...[...finished, ...before].flatMap((date) =>
      standing !== undefined && lastDayOf(date[1]) < firstDayOf(standing)
        ? [fault(date, 'before-building', String(Number(standing)))]
        : [],
    ),
  ]
}

/**
 * The same of a visit, beside the works of its case.
 *
 * @param today `YYYY-MM-DD`
 */
export function visitDateFaults(body: DatedVisit, works: readonly DatedWork[], today: string): FieldFault[] {
  const on = day.safeParse(body.on).success ? dated('on', body.on) : []
  const taken = (body.photos ?? []).flatMap((photo, i) => dated(`photos.${i}.takenOn`, photo.takenOn))
  const seen = works.find(({ id }) => id !== undefined && id === body.work)
  return [
    ...[...on, ...taken].flatMap((date) => (isAfter(date[1], today) ? [fault(date, 'in-the-future')] : [])),
    ...follows(on, seen?.started, 'before-start'),
  ]
}

const isDate = (text: string | undefined): text is string => partialDate.safeParse(text).success

const dated = (field: string, text: string | undefined): Dated[] => (isDate(text) ? [[field, text]] : [])

const isAfter = (date: string, today: string): boolean => firstDayOf(date) > today

const fault = ([field, value]: Dated, code: string, limit?: string): FieldFault => ({
  ...{ field, code, value },
  ...(limit !== undefined && { limit }),
})

/** A fault where a date lies wholly before the one it comes after. */
const follows = (dates: readonly Dated[], from: string | undefined, code: string): FieldFault[] =>
  dates.flatMap((date) =>
    isDate(from) && lastDayOf(date[1]) < firstDayOf(from) ? [fault(date, code, from)] : [],
  )

/** First year of a century of our era, as a date; of those before, dates of four digits tell nothing. */
const firstYearOf = (century: number | undefined): string | undefined =>
  century === undefined || century < 1 ? undefined : String((century - 1) * 100 + 1).padStart(4, '0')
