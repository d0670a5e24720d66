/** The classes of EN 459-1 whose single-result limits are held here. */
export const LIME_CLASSES = [
  'CL 90',
  'CL 80',
  'CL 70',
  'DL 90-30',
  'DL 90-5',
  'DL 85-30',
  'DL 80-5',
  'NHL 2',
  'NHL 3.5',
  'NHL 5',
  'FL A',
  'FL B',
  'FL C',
  'HL 2',
  'HL 3.5',
  'HL 5',
] as const
export type LimeClass = (typeof LIME_CLASSES)[number]

/** What a test certificate can state, with its unit. */
export const CERTIFICATE_ITEMS = {
  caoMgo: '%',
  mgo: '%',
  co2: '%',
  so3: '%',
  /** As CaO for calcium limes, as Ca(OH)2 for limes with hydraulic properties. */
  availableLime: '%',
  freeWater: '%',
  strength7d: 'MPa',
  strength28d: 'MPa',
  /** Time to the temperature of the reactivity class. */
  reactivity: 'min',
  passing10mm: '%',
  passing5mm: '%',
  passing2mm: '%',
  passing200um: '%',
  passing90um: '%',
} as const
export type CertificateItem = keyof typeof CERTIFICATE_ITEMS

export interface CertificateLimit {
  readonly min?: number
  readonly max?: number
  /** Why it is shown and judges nothing: seen only in memory, or two readings of the table disagree. */
  readonly unsure?: 'memory' | 'disputed'
}

export type ClassLimits = Partial<Record<CertificateItem, CertificateLimit>>

/** Where the limits come from; the table was seen quoted, not in the standard itself. */
export const SINGLE_RESULT_SOURCE = 'en-459-1, annex A, table A.4'
export const DECLARED_SOURCE = 'en-459-1'

const dry = { so3: { max: 2.5 }, freeWater: { max: 2.5 } }
const calcium = (caoMgo: number, co2: number, available: number): ClassLimits => ({
  caoMgo: { min: caoMgo },
  mgo: { max: 7 },
  co2: { max: co2 },
  availableLime: { min: available },
  ...dry,
})
const dolomitic = (caoMgo: number, mgo: number, co2: number): ClassLimits => ({
  caoMgo: { min: caoMgo },
  mgo: { min: mgo },
  co2: { max: co2 },
  ...dry,
})
const STRENGTHS: Record<'2' | '3.5' | '5', ClassLimits> = {
  '2': { strength28d: { min: 1.5, max: 10 } },
  '3.5': { strength28d: { min: 2.7, max: 14 } },
  '5': { strength7d: { min: 1.5 }, strength28d: { min: 4, max: 20 } },
}
const hydraulic = (
  strength: keyof typeof STRENGTHS,
  available: CertificateLimit,
  so3 = 2.5,
): ClassLimits => ({
  so3: { max: so3 },
  freeWater: { max: 2.5 },
  availableLime: available,
  ...STRENGTHS[strength],
})
/** A formulated lime's letter says its lime, a number beside it its strength; only the letter is held here. */
const formulated = (available: number): ClassLimits => ({ ...dry, availableLime: { min: available } })

/** What one result on a certificate may be (EN 459-1, Annex A, Table A.4). */
export const SINGLE_RESULT_LIMITS: Record<LimeClass, ClassLimits> = {
  'CL 90': calcium(85, 6, 77),
  'CL 80': calcium(75, 9, 62),
  'CL 70': calcium(65, 14, 52),
  'DL 90-30': dolomitic(85, 27, 6),
  'DL 90-5': dolomitic(85, 5, 6),
  'DL 85-30': dolomitic(80, 27, 11),
  'DL 80-5': dolomitic(75, 5, 11),
  // The table as seen prints 37, at odds with the class minimum usually quoted and its neighbours' steps.
  'NHL 2': hydraulic('2', { min: 37, unsure: 'disputed' }),
  'NHL 3.5': hydraulic('3.5', { min: 22 }),
  'NHL 5': hydraulic('5', { min: 12 }),
  'FL A': formulated(37),
  'FL B': formulated(22),
  'FL C': formulated(12),
  'HL 2': hydraulic('2', { min: 8 }, 3.5),
  'HL 3.5': hydraulic('3.5', { min: 6 }, 3.5),
  'HL 5': hydraulic('5', { min: 2.5 }, 3.5),
}

const remembered = (
  limits: Partial<Record<CertificateItem, Omit<CertificateLimit, 'unsure'>>>,
): ClassLimits =>
  Object.fromEntries(Object.entries(limits).map(([item, limit]) => [item, { ...limit, unsure: 'memory' }]))

/** What a class must meet over time, from memory: shown beside a result, never judging it. */
export const DECLARED_LIMITS: Partial<Record<LimeClass, ClassLimits>> = {
  'CL 90': remembered({
    caoMgo: { min: 90 },
    mgo: { max: 5 },
    co2: { max: 4 },
    so3: { max: 2 },
    availableLime: { min: 80 },
  }),
  'CL 80': remembered({
    caoMgo: { min: 80 },
    mgo: { max: 5 },
    co2: { max: 7 },
    so3: { max: 2 },
    availableLime: { min: 65 },
  }),
  'CL 70': remembered({
    caoMgo: { min: 70 },
    mgo: { max: 5 },
    co2: { max: 12 },
    so3: { max: 2 },
    availableLime: { min: 55 },
  }),
  'NHL 2': remembered({ availableLime: { min: 35 } }),
  'NHL 3.5': remembered({ availableLime: { min: 25 } }),
  'NHL 5': remembered({ availableLime: { min: 15 } }),
  'HL 2': remembered({ availableLime: { min: 10 } }),
  'HL 3.5': remembered({ availableLime: { min: 8 } }),
  'HL 5': remembered({ availableLime: { min: 4 } }),
}
