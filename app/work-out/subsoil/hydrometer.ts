import type { Outcome } from '#lib/mortar/fault.ts'
import type { Range } from '#lib/mortar/range.ts'
import { type HydrometerReading, readHydrometer } from '#lib/mortar/subsoil-hydrometer.ts'
import type { Given, Refused } from '../../_ui/workshop/calculation.ts'
import { faultsAt, refuse } from '../../_ui/workshop/faults-at.ts'

/** Readings with the fines that they part into clay and silt, % of the whole soil. */
export interface HydrometerFound {
  readonly reading: HydrometerReading
  readonly fines: Range
}

const READINGS = ['minutes', 'readings', 'temperatures'] as const

/**
 * Clay and silt from three rows of figures that go together: times, readings, temperatures. Refuses rows of
 * unequal length, and a reading above the one before: what settles cannot come back.
 */
export function workHydrometer(given: Given): Outcome<HydrometerFound> | Refused {
  const [minutes, readings, temperatures] = READINGS.map((name) =>
    given.list(name).map((value) => value ?? 0),
  ) as [number[], number[], number[]]
  const uneven = [
    ['readings', readings.length] as const,
    ['temperatures', temperatures.length] as const,
  ].filter(([, count]) => count !== minutes.length)
  if (uneven.length > 0)
    return refuse(
      ...uneven.map(([field, count]) => ({
        field,
        code: count < minutes.length ? 'too-short' : 'too-long',
        value: count,
        limit: minutes.length,
      })),
    )
  if (minutes.length < 2)
    return refuse({ field: 'minutes', code: 'too-short', value: minutes.length, limit: 2 })
  const rise = readings.find((reading, i) => reading > (readings[i - 1] ?? reading))
  if (rise !== undefined) return refuse({ field: 'readings', code: 'inconsistent', value: rise })
  const fines = given.need('fines')
  const outcome = faultsAt(
    readHydrometer({
      massG: given.need('mass-g').typical,
      finesPercent: fines,
      finesOnly: given.checked('fines-only'),
      particleDensityKgM3: given.need('grains'),
      blankGL: given.need('blank'),
      meniscusGL: given.need('meniscus').typical,
      readingErrorGL: given.need('reading-off').typical,
      readings: minutes.map((minute, i) => ({
        minutes: minute,
        readingGL: readings[i] as number,
        celsius: temperatures[i] as number,
      })),
    }),
    [
      [/^readings.*minutes$/, 'minutes'],
      [/^readings.*celsius$/, 'temperatures'],
      [/^readings.*$/, 'readings'],
    ],
  )
  return outcome.ok ? { ok: true, value: { reading: outcome.value, fines } } : outcome
}
