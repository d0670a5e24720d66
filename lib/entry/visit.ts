import { z } from 'zod'
import { day, slug, text } from './fields.ts'
import { DAMP_STATES, JOINT_STATES, OBSERVERS, READING_KINDS, SALTS, SEASONS, UNIT_STATES } from './terms.ts'

export const VISIT_SHAPE = 1

const reading = z.strictObject({
  kind: z.enum(READING_KINDS),
  instrument: text(120).optional(),
  value: z.number().min(-1000).max(1e6),
  /** As printed by the instrument; compared only within one kind. */
  unit: z.enum(['%', 'relative', 'mL/min', 'mm', 'rebound', '1']),
  where: text(160).optional(),
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
  invented: z.boolean(),
})
export type VisitBody = z.infer<typeof visitBody>
