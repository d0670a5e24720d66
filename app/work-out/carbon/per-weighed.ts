import { hydratePerQuicklime } from '#lib/mortar/lime.ts'
import type { Properties } from '#lib/mortar/material.ts'
import type { Usual } from '../../_ui/workshop/asked.ts'

/**
 * Oxide in a lime as it is weighed, kg per kg, from what its quicklime holds free. A hydrate weighs more by the
 * water that its free lime took up.
 */
export function perWeighed(
  { freeCaO, freeMgO }: Properties,
  oxide: 'freeCaO' | 'freeMgO',
  weighed: 'quicklime' | 'dry-hydrate',
): Usual | undefined {
  const of = oxide === 'freeCaO' ? freeCaO : freeMgO
  if (!of || !freeCaO) return undefined
  const kept = { basis: of.basis, ...(of.source !== undefined && { source: of.source }) }
  const { low, typical, high } = of
  if (weighed === 'quicklime') return { low, typical, high, ...kept }
  // More lime makes more hydrate, so the ends of a free lime stay its own; magnesia is diluted by either end.
  const by = (end: 'low' | 'typical' | 'high') => hydratePerQuicklime(freeCaO[end])
  return oxide === 'freeCaO'
    ? { low: low / by('low'), typical: typical / by('typical'), high: high / by('high'), ...kept }
    : { low: low / by('high'), typical: typical / by('typical'), high: high / by('low'), ...kept }
}
