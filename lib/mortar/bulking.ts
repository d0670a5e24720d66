/**
 * Growth in volume of damp sand, as a share of its dry loose volume: one parabola up from dry sand to the
 * peak, another down to saturation, where sand is back at its dry volume. The shape follows published
 * charts to about five points of a hundred; a jar test of the heap in hand beats it.
 *
 * @param moisture kg of water per kg of dry sand, from 0 to `saturation`
 * @param peak greatest growth
 * @param peakMoisture moisture at that growth, above 0 and below `saturation`
 * @param saturation moisture at which the sand holds no more
 * @example bulkingAt(0.05, 0.29, 0.05, 0.2) // 0.29
 */
export function bulkingAt(moisture: number, peak: number, peakMoisture: number, saturation: number): number {
  if (moisture >= saturation) return 0
  const t =
    moisture <= peakMoisture
      ? 1 - moisture / peakMoisture
      : (moisture - peakMoisture) / (saturation - peakMoisture)
  return peak * (1 - t * t)
}
