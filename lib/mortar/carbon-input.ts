import type { CarbonInput } from './carbon.ts'
import { inspect } from './inspect.ts'
import { exactly } from './range.ts'

/** Refuses quantities that are no quantities and shares over one, all at once. */
export function refuseBadCarbon(input: CarbonInput): void {
  const check = inspect()
  const kg = { min: 0, unit: 'kg' }
  const km = { min: 0, max: 50_000, unit: 'km' }
  if (input.limes.length + input.others.length === 0) check.refuse({ field: 'limes', code: 'empty' })
  check.range('mortarL', input.mortarL, { above: 0, unit: 'L' })
  input.limes.forEach((lime, i) => {
    check.range(`limes.${i}.massKg`, lime.massKg, kg)
    check.range(`limes.${i}.caoShare`, lime.caoShare, { min: 0, max: 1 })
    check.range(`limes.${i}.mgoShare`, lime.mgoShare, { min: 0, max: 1 })
    if (lime.caoShare.high + lime.mgoShare.high > 1.0000001)
      check.refuse({
        field: `limes.${i}.mgoShare`,
        code: 'inconsistent',
        value: lime.caoShare.high + lime.mgoShare.high,
        limit: 1,
      })
    check.range(`limes.${i}.fuelKgPerKg`, lime.fuelKgPerKg, { min: 0, max: 10 })
    check.range(`limes.${i}.kilnDustShare`, lime.kilnDustShare ?? exactly(0), { min: 0, max: 1 })
    check.range(`limes.${i}.distanceKm`, lime.distanceKm, km)
  })
  input.others.forEach((other, i) => {
    check.range(`others.${i}.massKg`, other.massKg, kg)
    check.range(`others.${i}.gateKgPerKg`, other.gateKgPerKg, { min: -100, max: 1000 })
    check.range(`others.${i}.distanceKm`, other.distanceKm, km)
  })
  check.range('transportKgPerTkm', input.transportKgPerTkm, { min: 0, max: 100 })
  check.range('uptakeShare', input.uptakeShare, { min: 0, max: 1 })
  check.range('kMmPerRootDay', input.kMmPerRootDay, { above: 0, max: 50, unit: 'mm/d^0.5' })
  check.range('depthMm', input.depthMm, { above: 0, max: 5000, unit: 'mm' })
  input.years.forEach((years, i) => {
    check.number(`years.${i}`, years, { min: 0, max: 2000, unit: 'a' })
  })
  check.finish()
}
