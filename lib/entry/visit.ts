import { z } from 'zod'
import { carried, harm, sha256 } from './common.ts'
import { day, slug, termId, text } from './fields.ts'
import { DAMP_STATES, JOINT_STATES, OBSERVERS, READING_KINDS, SALTS, SEASONS, UNIT_STATES } from './terms.ts'
import { workedOnList } from './worked-on.ts'

export const VISIT_SHAPE = 1

const reading = z.strictObject({
  kind: z.enum(READING_KINDS),
  instrument: text(120).optional(),
  value: z.number().min(-1000).max(1e6),
  /** As printed by the instrument; compared only within one kind. */
  unit: z.enum(['%', 'relative', 'mL/min', 'mm', 'rebound', '1']),
  where: text(160).optional(),
})

/** A photo of this visit, by the digest of its stored picture. */
const photo = z.strictObject({
  sha256,
  /** What the picture shows, for those who cannot see it. */
  alt: text(300),
  /** The place in the wall, in the same words at every visit, so that pictures of one spot can be compared. */
  spot: text(80).optional(),
  /** Only where the author agrees to keep it. */
  takenOn: day.optional(),
})
export type VisitPhoto = z.infer<typeof photo>

/** What another person present read on the same scales, without looking at the first reading. */
const secondReading = z.strictObject({
  who: z.enum(OBSERVERS),
  joint: z.enum(JOINT_STATES),
  unit: z.enum(UNIT_STATES),
  damp: z.enum(DAMP_STATES),
})

/** What one person saw and measured on one day, of one work of a case. */
export const visitBody = z.strictObject({
  case: slug,
  work: slug,
  on: day,
  /** The state when the work was finished: what later visits are measured against. */
  baseline: z.boolean(),
  daysSinceRain: z.number().int().min(0).max(365).optional(),
  season: z.enum(SEASONS),
  joint: z.enum(JOINT_STATES),
  unit: z.enum(UNIT_STATES),
  damp: z.enum(DAMP_STATES),
  salts: z.array(z.enum(SALTS)).max(5),
  readings: z.array(reading).max(30),
  seen: text(1200).optional(),
  observer: z.strictObject({ who: z.enum(OBSERVERS), how: text(300) }),
  others: z.array(secondReading).max(6).optional(),
  /** Terms of content/vocabularies/deterioration for what is seen. */
  deterioration: z.array(slug).max(12).optional(),
  /** Term of content/vocabularies/survey-classes. */
  surveyClass: termId.optional(),
  photos: z.array(photo).max(30).optional(),
  /** Sheets that what is told here was worked out on. */
  sheets: workedOnList,
  harm: harm.optional(),
  interests: text(300).optional(),
  invented: z.boolean(),
  ...carried,
})
export type VisitBody = z.infer<typeof visitBody>
