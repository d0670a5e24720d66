import type { JobIngredient, JobInput } from './job-types.ts'
import { hasWorkOf } from './job-works.ts'

/** Cautions that a job can call for, by the ids under which content keeps them. */
export const CAUTION_IDS = [
  'quicklime',
  'hot-mortar',
  'lime-putty-and-dust',
  'limewash',
  'silica-dust',
  'chromate-in-cement',
  'mixer',
  'lifting',
  'lime-waste',
  'deep-raking-and-packing',
] as const
export type CautionId = (typeof CAUTION_IDS)[number]

/** The heaviest pack that one person lifts without a thought, kg. Practice; local rules may say less. */
const HEAVY_PACK_KG = 20

const LIMEWASH: ReadonlySet<string> = new Set(['limewash'])
/** Takes support out of a wall, or loads it with what does not yet carry. */
const MAY_MOVE: ReadonlySet<string> = new Set(['pointing', 'pointing-rubble', 'deep-packing', 'grout'])

/** Cautions that fit what is on site; the pages add those that a single material carries. */
export function cautionsFor(
  input: JobInput,
  listed: readonly JobIngredient[],
  quicklime: boolean,
  slakesInSand: boolean,
): CautionId[] {
  const has = (...roles: readonly string[]) => listed.some(({ role }) => roles.includes(role))
  const calls: Record<CautionId, boolean> = {
    quicklime,
    'hot-mortar': slakesInSand,
    'lime-putty-and-dust': has('lime'),
    limewash: hasWorkOf(input, LIMEWASH),
    'silica-dust': has('aggregate', 'pozzolan', 'earth'),
    'chromate-in-cement': has('cement'),
    mixer: input.mixerL !== undefined,
    lifting: Object.values(input.packsKg ?? {}).some((kg) => kg >= HEAVY_PACK_KG),
    'lime-waste': has('lime', 'cement'),
    'deep-raking-and-packing': hasWorkOf(input, MAY_MOVE),
  }
  return CAUTION_IDS.filter((id) => calls[id])
}
