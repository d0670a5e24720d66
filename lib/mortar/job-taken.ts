import { ASSUMED } from './assumptions.ts'
import { HEAT_CAPACITY, SOURCES } from './constants.ts'
import type { JobPlan } from './job-layout.ts'
import type { JobInput, TakenFigure } from './job-types.ts'
import { HYDRATE_SOLID_DENSITY } from './lime.ts'
import type { PropertyName } from './material.ts'
import { MEAN_OF_STATES } from './mix.ts'
import { exactly, type Property, type Range } from './range.ts'
import { ABSENT, type Variables } from './variables.ts'

/**
 * Every figure of a material and every assumption that this job's results turn on, with where it comes from. What
 * moves no result when it is moved itself was only at hand, and is left out.
 */
export function takenFigures(
  input: JobInput,
  plan: JobPlan,
  vars: Variables,
  calculate: (x: Float64Array, out: Float64Array, choice: number) => void,
  outputs: number,
): TakenFigure[] {
  const matters = whatMatters(vars.ranges, calculate, outputs)
  const known = vars.names.flatMap((field, place): TakenFigure[] => {
    const figure = matters(place) ? figureOf(input, field, vars.ranges[place] as Range) : undefined
    return figure ? [figure] : []
  })
  return [...known, ...constantsFor(plan)]
}

/** Nudges one input at a time, to its ends and a hair beside, and sees whether any output follows. */
function whatMatters(
  ranges: readonly Range[],
  calculate: (x: Float64Array, out: Float64Array, choice: number) => void,
  outputs: number,
): (place: number) => boolean {
  const x = Float64Array.from(ranges, ({ typical }) => typical)
  const [still, moved] = [new Float64Array(outputs), new Float64Array(outputs)]
  calculate(x, still, MEAN_OF_STATES)
  return (place) => {
    const { low, typical, high } = ranges[place] as Range
    const felt = [low, high, typical * 0.99, typical * 1.01].some((value) => {
      x[place] = value
      calculate(x, moved, MEAN_OF_STATES)
      return moved.some((output, k) => output !== still[k])
    })
    x[place] = typical
    return felt
  }
}

function figureOf(input: JobInput, field: string, value: Range): TakenFigure | undefined {
  const [group, material = '', name = ''] = field.split('.')
  if (group === 'materials') {
    const property = input.materials[material]?.[name as PropertyName]
    return property && { field, value: bare(value), ...origin(property) }
  }
  if (group !== 'assumed') return undefined
  if (!isAssumption(material)) return { field, value: bare(value), unit: '1', basis: 'practice' }
  const own = input.assumed?.[material] !== undefined
  return {
    field,
    value: bare(value),
    ...origin(ASSUMED[material]),
    ...(own && { basis: 'measured' as const }),
  }
}

/** The range alone: a material's figure carries its unit and source along. */
const bare = ({ low, typical, high }: Range): Range => ({ low, typical, high })

const isAssumption = (name: string): name is keyof typeof ASSUMED => Object.hasOwn(ASSUMED, name)

const origin = ({ unit, basis, source }: Property) => ({
  unit,
  basis,
  ...(source !== undefined && { source }),
})

/** What a pure substance stands in for, where a material's own figure is not known. */
function constantsFor({ mix, siteStates, slakesInSand }: JobPlan): TakenFigure[] {
  const slakes = siteStates.some((state) => state === 'lump-quicklime' || state === 'ground-quicklime')
  return mix.ingredients.flatMap(({ material, role, property }): TakenFigure[] => {
    if (role === 'lime' && property.particleDensityHydrate === ABSENT)
      return [
        {
          field: `materials.${material}.particleDensityHydrate`,
          value: exactly(HYDRATE_SOLID_DENSITY),
          unit: 'kg/m3',
          basis: 'read',
          source: SOURCES.densities,
        },
      ]
    const lies = role === 'aggregate' || role === 'earth'
    if (lies && slakes && slakesInSand && property.heatCapacity === ABSENT)
      return [
        {
          field: `materials.${material}.heatCapacity`,
          value: exactly(HEAT_CAPACITY.quartz),
          unit: 'kJ/(kg.K)',
          basis: 'read',
          source: SOURCES.thermodynamics,
        },
      ]
    return []
  })
}
