/**
 * Density of pure, air-free water at one atmosphere, kg/m³.
 *
 * @param celsius 0 to 40; source: Tanaka and others, Metrologia 38 (2001) 301, eq. 1
 */
export function waterDensity(celsius: number): number {
  const t = celsius
  return 999.97495 * (1 - ((t - 3.983035) ** 2 * (t + 301.797)) / (522528.9 * (t + 69.34881)))
}

/**
 * Dynamic viscosity of water, Pa·s, good to about 1 % between 0 and 40 °C.
 *
 * @param celsius temperature; the common fit 2.414e-5 · 10^(247.8 / (T − 140)), T in kelvin
 */
export const waterViscosity = (celsius: number): number => 2.414e-5 * 10 ** (247.8 / (celsius + 133.15))
