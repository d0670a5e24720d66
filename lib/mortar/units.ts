import { MortarFault } from './fault.ts'
import type { Range } from './range.ts'

interface UnitEntry {
  readonly dimension: string
  /** How many base units (m, m², m³, kg…) one of this makes. Exact: NIST SP 811, Appendix B. */
  readonly factor: number
  readonly system: 'metric' | 'us' | 'both'
}

const INCH = 0.0254
const FOOT = 0.3048
const YARD = 0.9144
const POUND = 0.45359237
const BTU = 1055.05585262

const entry = (dimension: string, factor: number, system: UnitEntry['system'] = 'metric'): UnitEntry => ({
  dimension,
  factor,
  system,
})

/** Units by the symbol that ranges, properties and steps carry. */
export const UNITS = {
  mm: entry('length', 1e-3),
  cm: entry('length', 1e-2),
  m: entry('length', 1),
  km: entry('length', 1000),
  mi: entry('length', 1609.344, 'us'),
  in: entry('length', INCH, 'us'),
  ft: entry('length', FOOT, 'us'),
  yd: entry('length', YARD, 'us'),
  mm2: entry('area', 1e-6),
  m2: entry('area', 1),
  in2: entry('area', INCH ** 2, 'us'),
  ft2: entry('area', FOOT ** 2, 'us'),
  yd2: entry('area', YARD ** 2, 'us'),
  mL: entry('volume', 1e-6),
  L: entry('volume', 1e-3),
  m3: entry('volume', 1),
  gal: entry('volume', 231 * INCH ** 3, 'us'),
  bu: entry('volume', 2150.42 * INCH ** 3, 'us'),
  ft3: entry('volume', FOOT ** 3, 'us'),
  yd3: entry('volume', YARD ** 3, 'us'),
  'L/m2': entry('volume per area', 1e-3),
  'gal/ft2': entry('volume per area', (231 * INCH ** 3) / FOOT ** 2, 'us'),
  g: entry('mass', 1e-3),
  kg: entry('mass', 1),
  t: entry('mass', 1000),
  lb: entry('mass', POUND, 'us'),
  ton: entry('mass', 2000 * POUND, 'us'),
  'kg/m2': entry('mass per area', 1),
  'lb/ft2': entry('mass per area', POUND / FOOT ** 2, 'us'),
  'kg/m3': entry('density', 1),
  'g/L': entry('density', 1),
  'lb/ft3': entry('density', POUND / FOOT ** 3, 'us'),
  kJ: entry('energy', 1000),
  kWh: entry('energy', 3.6e6),
  Btu: entry('energy', BTU, 'us'),
  'kJ/kg': entry('energy per mass', 1000),
  'Btu/lb': entry('energy per mass', BTU / POUND, 'us'),
  'kJ/K': entry('heat per degree', 1000),
  'Btu/F': entry('heat per degree', BTU / (5 / 9), 'us'),
  'kJ/(kg.K)': entry('heat capacity', 1000),
  'Btu/(lb.F)': entry('heat capacity', BTU / POUND / (5 / 9), 'us'),
  MPa: entry('pressure', 1e6),
  psi: entry('pressure', (POUND * 9.80665) / INCH ** 2, 'us'),
  C: entry('temperature', 1),
  F: entry('temperature', 5 / 9, 'us'),
  K: entry('temperature difference', 1),
  dF: entry('temperature difference', 5 / 9, 'us'),
  min: entry('time', 60, 'both'),
  h: entry('time', 3600, 'both'),
  d: entry('time', 86400, 'both'),
  year: entry('time', 365.25 * 86400, 'both'),
  'mm/d^0.5': entry('carbonation coefficient', 1, 'both'),
  'kg/(m2.d)': entry('drying rate', 1, 'both'),
  'kg/(m2.min^0.5)': entry('capillary uptake', 1, 'both'),
  'kg/kg': entry('mass per mass', 1, 'both'),
  'kg/(t.km)': entry('mass per haulage', 1, 'both'),
  '%': entry('share', 0.01, 'both'),
  '1': entry('share', 1, 'both'),
} as const satisfies Record<string, UnitEntry>
export type Unit = keyof typeof UNITS

/** The US customary unit that a metric one is shown in. What is missing is shown as it is. */
const US_FOR: Partial<Record<Unit, Unit>> = {
  mm: 'in',
  cm: 'in',
  m: 'ft',
  km: 'mi',
  mm2: 'in2',
  m2: 'ft2',
  L: 'ft3',
  m3: 'yd3',
  'L/m2': 'gal/ft2',
  g: 'lb',
  kg: 'lb',
  t: 'ton',
  'kg/m2': 'lb/ft2',
  'kg/m3': 'lb/ft3',
  kJ: 'Btu',
  'kJ/kg': 'Btu/lb',
  'kJ/K': 'Btu/F',
  'kJ/(kg.K)': 'Btu/(lb.F)',
  MPa: 'psi',
  C: 'F',
  K: 'dF',
}

const isUnit = (unit: string): unit is Unit => Object.hasOwn(UNITS, unit)

/**
 * A value in another unit of the same kind.
 *
 * @throws MortarFault `unknown` for a unit that is not in {@link UNITS}, `inconsistent` for two units
 *   of different kinds
 * @example convert(1, 'ft3', 'L') // 28.316846592
 */
export function convert(value: number, from: string, to: string): number {
  if (!isUnit(from)) throw new MortarFault({ field: 'from', code: 'unknown', value: from })
  if (!isUnit(to)) throw new MortarFault({ field: 'to', code: 'unknown', value: to })
  if (UNITS[from].dimension !== UNITS[to].dimension)
    throw new MortarFault({ field: 'to', code: 'inconsistent', value: to, limit: UNITS[from].dimension })
  if (from === to) return value
  const zero = (unit: Unit) => (unit === 'F' ? 32 : 0)
  return ((value - zero(from)) * UNITS[from].factor) / UNITS[to].factor + zero(to)
}

/** A range in another unit of the same kind; see {@link convert}. */
export const convertRange = (range: Range, from: string, to: string): Range => ({
  low: convert(range.low, from, to),
  typical: convert(range.typical, from, to),
  high: convert(range.high, from, to),
})

/**
 * The unit that a metric unit is shown in. A US mason measures mortar, sand and lime by the cubic foot, and
 * only what is poured by the gallon.
 *
 * @param liquid is it water?
 */
export function shownUnit(metric: string, system: 'metric' | 'us', liquid = false): string {
  if (system === 'metric' || !isUnit(metric)) return metric
  return liquid && metric === 'L' ? 'gal' : (US_FOR[metric] ?? metric)
}
