/**
 * Unit symbols of the sums → their key in the words catalogue, under `units`. A unit that is not here
 * cannot be printed.
 */
export const UNIT_WORDS = {
  '1': 'none',
  '%': 'percent',
  mm: 'millimetre',
  m: 'metre',
  km: 'kilometre',
  m2: 'squareMetre',
  m3: 'cubicMetre',
  mL: 'millilitre',
  L: 'litre',
  'L/m2': 'litrePerSquareMetre',
  'L/kg': 'litrePerKilogram',
  g: 'gram',
  kg: 'kilogram',
  t: 'tonne',
  'kg/m2': 'kilogramPerSquareMetre',
  'kg/m3': 'kilogramPerCubicMetre',
  'kg/kg': 'kilogramPerKilogram',
  'kg/L': 'kilogramPerLitre',
  C: 'celsius',
  K: 'kelvin',
  kJ: 'kilojoule',
  'kJ/kg': 'kilojoulePerKilogram',
  'kJ/(kg.K)': 'specificHeat',
  MJ: 'megajoule',
  kWh: 'kilowattHour',
  MPa: 'megapascal',
  min: 'minute',
  h: 'hour',
  d: 'day',
  year: 'year',
  'mL/min': 'millilitrePerMinute',
  'mm/year0.5': 'millimetrePerRootYear',
  rebound: 'rebound',
  relative: 'relative',
  part: 'part',
  in: 'inch',
  ft: 'foot',
  ft2: 'squareFoot',
  ft3: 'cubicFoot',
  yd3: 'cubicYard',
  'US gal': 'usGallon',
  lb: 'pound',
  'lb/ft3': 'poundPerCubicFoot',
  F: 'fahrenheit',
} as const
export type Unit = keyof typeof UNIT_WORDS

/** Is this a unit that the catalogue has a word for? */
export const isUnit = (unit: string): unit is Unit => Object.hasOwn(UNIT_WORDS, unit)
