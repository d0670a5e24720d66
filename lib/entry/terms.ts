/**
 * The closed lists that bodies are made of. content/vocabularies gives each its label and definition;
 * a test holds the two together. Open lists (lithology, materials, sources) live in content alone.
 */

export const KINDS = ['case', 'visit', 'recipe', 'material', 'source', 'row'] as const
export type Kind = (typeof KINDS)[number]

export const STANDINGS = ['in-use', 'historical-only', 'known-hazard'] as const
export type Standing = (typeof STANDINGS)[number]

export const FAMILIES = [
  'earth',
  'earth-lime',
  'air-lime',
  'hydraulic-lime',
  'pozzolanic-lime',
  'natural-cement',
  'cement-lime',
  'gypsum-lime',
] as const
export type Family = (typeof FAMILIES)[number]

export const USES = [
  'bedding-rubble',
  'bedding-ashlar',
  'bedding-brick',
  'pointing',
  'deep-packing',
  'grout',
  'plaster-base',
  'plaster-finish',
  'render-base',
  'render-finish',
  'floor',
  'hydraulic-works',
  'roofing',
  'infill',
  'limewash',
  'gauged-work',
  'concrete',
] as const
export type Use = (typeof USES)[number]

/** How the mortar was made. */
export const METHODS = [
  'hot-mixed-used-hot',
  'hot-mixed-laid-down',
  'sand-slaked',
  'putty',
  'dry-hydrate',
  'bagged-hydraulic',
  'earth-wet-mixed',
  'not-stated',
] as const
export type Method = (typeof METHODS)[number]

/** The four states in which lime is measured. Never a bare "slaked lime" beside a number. */
export const LIME_STATES = ['lump-quicklime', 'ground-quicklime', 'dry-hydrate', 'putty'] as const
export type LimeState = (typeof LIME_STATES)[number]

/**
 * The state an ingredient was in when it was measured. `slaked-not-stated` is lime after slaking, powder
 * or putty not said; `not-stated` could be any of the lime states.
 */
export const MEASURED_STATES = [
  ...LIME_STATES,
  'slaked-not-stated',
  'quicklime-not-stated',
  'dry',
  'damp',
  'not-stated',
] as const
export type MeasuredState = (typeof MEASURED_STATES)[number]

export const ROLES = [
  'lime',
  'aggregate',
  'pozzolan',
  'earth',
  'cement',
  'gypsum',
  'fibre',
  'additive',
  'pigment',
  'water',
] as const
export type Role = (typeof ROLES)[number]

export const MEASURES = ['volume', 'mass'] as const
export type Measure = (typeof MEASURES)[number]

export const WALL_TYPES = [
  'rubble-random',
  'rubble-coursed',
  'squared-rubble',
  'ashlar',
  'rubble-core-ashlar-face',
  'brick-solid',
  'brick-faced-rubble',
  'earth-solid',
  'earth-block',
  'framed-infill',
  'dry-stone-pointed',
] as const
export type WallType = (typeof WALL_TYPES)[number]

export const DRIVING_RAIN = ['sheltered', 'moderate', 'severe', 'very-severe', 'not-recorded'] as const
export type DrivingRain = (typeof DRIVING_RAIN)[number]

export const FROST = ['none', 'occasional', 'frequent', 'severe-saturated', 'not-recorded'] as const
export type Frost = (typeof FROST)[number]

export const GROUND = [
  'free-draining',
  'retains-water',
  'high-water-table',
  'waterside',
  'not-recorded',
] as const
export type Ground = (typeof GROUND)[number]

export const ASPECTS = ['N', 'NE', 'E', 'SE', 'S', 'SW', 'W', 'NW', 'all', 'not-recorded'] as const
export type Aspect = (typeof ASPECTS)[number]

export const SALTS = ['chlorides', 'sulfates', 'nitrates', 'carbonates', 'unidentified'] as const
export type Salt = (typeof SALTS)[number]

/** Ordinal, best first. Index in the list is the step. */
export const JOINT_STATES = ['sound', 'fine-cracks', 'worn', 'open', 'lost'] as const
export type JointState = (typeof JOINT_STATES)[number]

/** Ordinal, best first. Terms for what is seen follow the ICOMOS-ISCS glossary. */
export const UNIT_STATES = ['sound', 'powdering', 'scaling', 'hollowing', 'broken'] as const
export type UnitState = (typeof UNIT_STATES)[number]

/** Ordinal, driest first. */
export const DAMP_STATES = ['dry', 'slightly-damp', 'damp', 'wet', 'running'] as const
export type DampState = (typeof DAMP_STATES)[number]

export const SEASONS = ['winter', 'spring', 'summer', 'autumn', 'dry-season', 'wet-season'] as const
export type Season = (typeof SEASONS)[number]

export const STRUCTURES = [
  'dwelling',
  'farm-building',
  'place-of-worship',
  'boundary-wall',
  'retaining-wall',
  'bridge',
  'mill',
  'fortification',
  'chimney',
  'civic-building',
  'harbour-work',
  'ruin',
] as const
export type Structure = (typeof STRUCTURES)[number]

export const WORK_ENDS = ['repointed-failed', 'replaced-other-reason', 'lost', 'last-seen'] as const
export type WorkEnd = (typeof WORK_ENDS)[number]

export const OBSERVERS = [
  'did-the-work',
  'other-practitioner',
  'owner-or-keeper',
  'surveyor',
  'student',
] as const
export type Observer = (typeof OBSERVERS)[number]

export const READING_KINDS = [
  'moisture-oven-dry',
  'moisture-carbide',
  'moisture-meter-relative',
  'water-uptake-tube',
  'carbonation-depth',
  'surface-hardness',
  'joint-loss-depth',
] as const
export type ReadingKind = (typeof READING_KINDS)[number]
