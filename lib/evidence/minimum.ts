import { DAYS_PER_YEAR } from './interval.ts'

/** Below either of these there is a list of walls and no curve; this project's own conventions. */
export const MIN_WALLS = 5
export const MIN_WALL_YEARS = 10

/** How many more walls, and years of watching them, it would take; null where there are enough. */
export function lacking({
  walls,
  watchedDays,
}: {
  readonly walls: number
  /** Days from baseline to last visit, over all walls. */
  readonly watchedDays: number
}): { readonly walls: number; readonly wallYears: number } | null {
  const short = {
    walls: Math.max(0, MIN_WALLS - walls),
    wallYears: Math.max(0, MIN_WALL_YEARS - watchedDays / DAYS_PER_YEAR),
  }
  return short.walls > 0 || short.wallYears > 0 ? short : null
}
