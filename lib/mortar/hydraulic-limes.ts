/**
 * Limes that set under water by themselves, by the ids under which content keeps them: left as putty they are lost. That
 * they are slaked with just enough water, and used soon, is common practice.
 */
const HYDRAULIC: ReadonlySet<string> = new Set([
  'lime-nhl2',
  'lime-nhl35',
  'lime-nhl5',
  'lime-feebly-hydraulic',
  'lime-moderately-hydraulic',
  'lime-eminently-hydraulic',
  'lime-hydraulic-not-stated',
  'lime-kankar',
  'lime-selenitic',
])

/** Does this lime set under water? Of a material that somebody added it is not known. */
export const setsUnderWater = (material: string): boolean => HYDRAULIC.has(material)
