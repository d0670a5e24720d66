import { content } from '#lib/content/index.ts'
import type { Use, WallType } from '#lib/entry/terms.ts'
import type { FieldFault } from '#lib/errors.ts'
import { type Params, unknownFault, valuesFor } from './case-query.ts'
import { countryFault, isCountry } from './countries.ts'
import type { WallAsked } from './likeness.ts'

/** What an address says where no salts were seen, which is not the same as not saying. */
const NO_SALTS = 'none'

/** The wall that an address describes, and what of it cannot be used. Empty fields are no answer. */
export function wallAskedOf(params: Params): { wall: WallAsked; faults: FieldFault[] } {
  const faults: FieldFault[] = []
  const terms = (name: string, vocabulary: string, extra: readonly string[] = []): string[] =>
    valuesFor(params, name).filter((value) => {
      const known = [...(content().vocabularies.get(vocabulary)?.keys() ?? []), ...extra]
      if (known.includes(value)) return true
      faults.push(unknownFault(name, value, known))
      return false
    })
  const unit = terms('unit', 'units')
  const [wall] = terms('wall', 'wall-types')
  const [use] = terms('use', 'uses')
  const [rain] = terms('rain', 'driving-rain')
  const [frost] = terms('frost', 'frost')
  const salts = terms('salt', 'salts', [NO_SALTS])
  const place = placeOf(params, faults)
  return {
    wall: {
      ...(unit.length > 0 && { unit }),
      ...(wall !== undefined && { wall: wall as WallType }),
      ...(use !== undefined && { use: use as Use }),
      ...((rain !== undefined || frost !== undefined) && {
        exposure: { ...(rain !== undefined && { rain }), ...(frost !== undefined && { frost }) },
      }),
      ...(Object.keys(place).length > 0 && { place }),
      ...(salts.length > 0 && { salts: salts.filter((salt) => salt !== NO_SALTS) }),
    },
    faults,
  }
}

/** The wall as an address has it: what {@link wallAskedOf} reads. */
export function wallAskedQuery({ unit = [], wall, use, exposure, place, salts }: WallAsked): URLSearchParams {
  const named: [string, string | number | undefined][] = [
    ...unit.map((one): [string, string] => ['unit', one]),
    ['wall', wall],
    ['use', use],
    ['rain', exposure?.rain],
    ['frost', exposure?.frost],
    ['country', place?.country],
    ['latitude', place?.latitude],
    ['longitude', place?.longitude],
    ...(salts?.length === 0 ? [NO_SALTS] : (salts ?? [])).map((one): [string, string] => ['salt', one]),
  ]
  const params = new URLSearchParams()
  for (const [name, value] of named) if (value !== undefined) params.append(name, String(value))
  return params
}

function placeOf(params: Params, faults: FieldFault[]): NonNullable<WallAsked['place']> {
  const [country] = valuesFor(params, 'country')
  const isKnown = country !== undefined && isCountry(country)
  if (country !== undefined && !isKnown) faults.push(countryFault('country', country))
  const latitude = degrees(params, 'latitude', 90, faults)
  const longitude = degrees(params, 'longitude', 180, faults)
  return {
    ...(isKnown && { country }),
    ...(latitude !== undefined && { latitude }),
    ...(longitude !== undefined && { longitude }),
  }
}

function degrees(params: Params, field: string, most: number, faults: FieldFault[]): number | undefined {
  const [given] = valuesFor(params, field)
  if (given === undefined) return undefined
  const text = given.trim().replace('−', '-').replace(',', '.')
  const value = Number(text)
  if (!/^-?\d{1,3}(\.\d{1,8})?$/.test(text)) faults.push({ field, code: 'not-a-number', value: given })
  else if (value > most) faults.push({ field, code: 'too-large', value: given, limit: most })
  else if (value < -most) faults.push({ field, code: 'too-small', value: given, limit: -most })
  else return value
  return undefined
}
