import type { Season } from './terms.ts'

/** The tropics, in degrees: between them the calendar tells no season. */
const TROPIC = 23.5

const NORTH = ['winter', 'spring', 'summer', 'autumn'] as const satisfies readonly Season[]

/**
 * The season that a day falls in by the months of the calendar, three to each (common practice of weather records).
 * A suggestion: the place may have it otherwise.
 *
 * @param day `YYYY-MM-DD`
 * @param latitude in degrees, south of the equator below zero
 * @returns undefined between the tropics
 */
export function seasonOf(day: string, latitude: number): Season | undefined {
  if (Math.abs(latitude) <= TROPIC) return undefined
  const quarter = Math.floor((Number(day.slice(5, 7)) % 12) / 3) + (latitude < 0 ? 2 : 0)
  return NORTH[quarter % 4]
}
