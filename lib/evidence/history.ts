/** What one visit found; states as steps on their scales, 0 the best. */
export interface Seen {
  /** Days on any calendar, the same for everything in one history. */
  readonly day: number
  readonly baseline: boolean
  readonly joint: number
  readonly unit: number
  readonly damp: number
  readonly daysSinceRain?: number
  readonly season?: string
}

/** The days a date can mean: one day, a month or a year. */
export interface DayRange {
  readonly first: number
  readonly last: number
}

export const ENDINGS = ['repointed-failed', 'replaced-other-reason', 'lost', 'last-seen'] as const
export type Ending = (typeof ENDINGS)[number]

/** All that is known of one work. */
export interface History {
  readonly finished: DayRange
  readonly visits: readonly Seen[]
  readonly ended?: DayRange & { readonly how: Ending }
}

/** Why a work tells nothing about any end point. It is left out and counted. */
export const LEFT_OUT = ['no-visit', 'no-baseline', 'baseline-late', 'not-revisited'] as const
export type LeftOut = (typeof LEFT_OUT)[number]

/** A first visit so soon after the work was finished counts as its baseline though nobody marked it. */
export const BASELINE_WITHIN_DAYS = 92
/** A visit marked as baseline later than this saw a wall that had already weathered: its age is not known. */
export const BASELINE_AT_MOST_DAYS = 366
/** Scaffolds are struck a little before or after the day a work is said to be finished. */
export const BASELINE_EARLY_DAYS = 31

/** A history read against its baseline: days count from that visit. */
export interface Watched {
  readonly baseline: Seen
  /** Later visits, earliest first, up to the end of the work. */
  readonly visits: readonly Seen[]
  readonly ended?: DayRange & { readonly how: Exclude<Ending, 'last-seen'> }
  /** Day of the last visit: how long the wall was watched. */
  readonly watchedDays: number
}

/**
 * Finds the baseline and puts what came after into days since it.
 *
 * The baseline is the first visit marked as such, else the first visit, if it was within
 * {@link BASELINE_WITHIN_DAYS} of the work's end. One marked more than {@link BASELINE_AT_MOST_DAYS} after is
 * too late to say how old the work was. Those limits are this project's own conventions. Visits after the work
 * ended saw another mortar and are passed over. `last-seen` is no end: nobody has looked since.
 */
export function watch({ finished, visits, ended }: History): Watched | LeftOut {
  const sorted = [...visits].sort((a, b) => a.day - b.day)
  if (sorted.length === 0) return 'no-visit'
  const possible = sorted.filter(({ day }) => day >= finished.first - BASELINE_EARLY_DAYS)
  const marked = possible.find((visit) => visit.baseline)
  const baseline = marked ?? possible.find(({ day }) => day <= finished.last + BASELINE_WITHIN_DAYS)
  if (baseline === undefined) return 'no-baseline'
  if (baseline.day > finished.last + BASELINE_AT_MOST_DAYS) return 'baseline-late'
  const end = ended === undefined || ended.how === 'last-seen' ? undefined : since(ended, baseline.day)
  const later = sorted
    .filter(({ day }) => day > baseline.day)
    .map((visit) => ({ ...visit, day: visit.day - baseline.day }))
    .filter(({ day }) => end === undefined || day <= end.last)
  if (later.length === 0 && (end === undefined || end.last <= 0)) return 'not-revisited'
  return {
    baseline,
    visits: later,
    watchedDays: later.at(-1)?.day ?? 0,
    ...(end === undefined || end.last <= 0 ? {} : { ended: end }),
  }
}

const since = ({ how, first, last }: NonNullable<History['ended']>, day: number) => ({
  how: how as Exclude<Ending, 'last-seen'>,
  first: first - day,
  last: last - day,
})
