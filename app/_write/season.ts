import { greatest } from 'd3-array'
import { geoArea, geoCentroid } from 'd3-geo'
import { whereAlpha2 } from 'iso-3166-1'
import atlas from 'world-atlas/countries-110m.json'
import { z } from 'zod'
import type { CaseBody } from '#lib/entry/case.ts'
import { seasonOf } from '#lib/entry/season.ts'
import type { Season } from '#lib/entry/terms.ts'
import { partsOf } from '../_ui/map/outlines.ts'
import { readDate } from './read-date.ts'

const latitudes = new Map<string, number | undefined>()

/** Degrees north of the middle of a country's largest piece of land; undefined where the outlines have none. */
function latitudeOf(alpha2: string): number | undefined {
  if (!latitudes.has(alpha2)) {
    const numeric = whereAlpha2(alpha2)?.numeric
    const own = partsOf(atlas).filter(({ country }) => country !== undefined && country === numeric)
    const main = greatest(own, ({ polygon }) => geoArea(polygon))
    latitudes.set(alpha2, main && geoCentroid(main.polygon)[1])
  }
  return latitudes.get(alpha2)
}

/** What was typed may have no such day: 31 February suggests nothing. */
const isDay = (day: string) => z.iso.date().safeParse(day).success

type Text = Readonly<Record<string, string>>

/** The season that a form's day suggests, as it is typed. */
export const seasonOfDay = (typed: Text, place: CaseBody['place'] | undefined): Season | undefined =>
  suggestSeason(readDate(typed.on ?? ''), place)

/** A form in which the season follows the day unless its writer chose one. */
export const withSeason = (typed: Text, season: Season | undefined): Text =>
  season === undefined || (typed.season ?? '') !== '' ? typed : { ...typed, season }

/** The other way round: a season that the day suggests anyway was chosen by nobody, and follows the day again. */
export function followingDay(typed: Text, place: CaseBody['place'] | undefined): Text {
  if (typed.season === undefined || typed.season !== seasonOfDay(typed, place)) return typed
  const { season, ...rest } = typed
  return rest
}

/** The season of a visit as its day and its place suggest it; undefined where they suggest none. */
export function suggestSeason(day: unknown, place: CaseBody['place'] | undefined): Season | undefined {
  if (typeof day !== 'string' || !isDay(day) || place === undefined) return undefined
  const latitude = place.latitude ?? latitudeOf(place.country)
  return latitude === undefined ? undefined : seasonOf(day, latitude)
}
