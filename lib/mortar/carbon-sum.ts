import type { CarbonInput } from './carbon.ts'
import { MOLAR_MASS } from './constants.ts'
import type { Range } from './range.ts'
import { spreadVector } from './spread.ts'
import { at, variables } from './variables.ts'

/** CO2 driven out per kg of oxide burnt, kg. */
export const CO2_PER_CAO = MOLAR_MASS.CO2 / MOLAR_MASS.CaO
export const CO2_PER_MGO = MOLAR_MASS.CO2 / MOLAR_MASS.MgO

export const DAYS_PER_YEAR = 365.25

/**
 * Calcination, fuel, others, transport and released, kg; released per m³, kg/m³; taken and left in the end, kg;
 * then taken and left at each age.
 */
type CarbonRanges = [Range, Range, Range, Range, Range, Range, Range, Range, ...Range[]]

/** All figures of a count with their ranges. */
export function spreadCarbon(input: CarbonInput): CarbonRanges {
  const vars = variables()
  const mortar = vars.add('mortar', input.mortarL)
  const perTkm = vars.add('transport', input.transportKgPerTkm)
  const share = vars.add('share', input.uptakeShare)
  const k = vars.add('k', input.kMmPerRootDay)
  const depth = vars.add('depth', input.depthMm)
  const limes = input.limes.map((lime, i) => ({
    mass: vars.add(`lime.${i}.mass`, lime.massKg),
    cao: vars.add(`lime.${i}.cao`, lime.caoShare),
    mgo: vars.add(`lime.${i}.mgo`, lime.mgoShare),
    fuel: vars.add(`lime.${i}.fuel`, lime.fuelKgPerKg),
    dust: vars.add(`lime.${i}.dust`, lime.kilnDustShare ?? 0),
    km: vars.add(`lime.${i}.km`, lime.distanceKm),
  }))
  const others = input.others.map((other, i) => ({
    mass: vars.add(`other.${i}.mass`, other.massKg),
    gate: vars.add(`other.${i}.gate`, other.gateKgPerKg),
    km: vars.add(`other.${i}.km`, other.distanceKm),
  }))
  const roots = input.years.map((years) => Math.sqrt(years * DAYS_PER_YEAR))
  const outputs = ['calcination', 'fuel', 'others', 'transport', 'released', 'perM3', 'taken', 'left'].concat(
    input.years.flatMap((years) => [`taken.${years}`, `left.${years}`]),
  )
  return spreadVector(vars.names, vars.ranges, outputs, (x, out) => {
    let [calcination, fuel, other, tonneKm, bound] = [0, 0, 0, 0, 0]
    for (const lime of limes) {
      const mass = at(x, lime.mass)
      const fromCaO = mass * at(x, lime.cao) * CO2_PER_CAO
      calcination += (fromCaO + mass * at(x, lime.mgo) * CO2_PER_MGO) * (1 + at(x, lime.dust))
      fuel += mass * at(x, lime.fuel)
      bound += fromCaO
      tonneKm += (mass * at(x, lime.km)) / 1000
    }
    for (const material of others) {
      const mass = at(x, material.mass)
      other += mass * at(x, material.gate)
      tonneKm += (mass * at(x, material.km)) / 1000
    }
    const transport = tonneKm * at(x, perTkm)
    const released = calcination + fuel + other + transport
    out[0] = calcination
    out[1] = fuel
    out[2] = other
    out[3] = transport
    out[4] = released
    out[5] = (1000 * released) / at(x, mortar)
    out[6] = bound * at(x, share)
    out[7] = released - out[6]
    for (let i = 0; i < roots.length; i++) {
      const front = Math.min(1, (at(x, k) * (roots[i] as number)) / at(x, depth))
      const taken = bound * at(x, share) * front
      out[8 + 2 * i] = taken
      out[9 + 2 * i] = released - taken
    }
  }) as CarbonRanges
}
