import { LIME_STATES, MEASURES } from '#lib/entry/terms.ts'
import type { Outcome } from '#lib/mortar/fault.ts'
import type { Range } from '#lib/mortar/range.ts'
import { type JarReading, readJar } from '#lib/mortar/subsoil.ts'
import { type Amendment, amendSoil } from '#lib/mortar/subsoil-blend.ts'
import { limeOnSoil } from '#lib/mortar/subsoil-lime.ts'
import { readShrinkage, type Shrinkage } from '#lib/mortar/subsoil-shrinkage.ts'
import { readWetSieve } from '#lib/mortar/subsoil-sieve.ts'
import type { BenchData } from '../../_ui/workshop/brought.ts'
import type { Calculation, Given, Refused } from '../../_ui/workshop/calculation.ts'
import { faultsAt, refuse } from '../../_ui/workshop/faults-at.ts'
import { LIME_FIGURES, propertiesOf } from '../../_ui/workshop/own-figures.ts'
import { ASKED, type Asked, fieldsOf, JAR_LAYERS } from './fields.ts'
import { workHydrometer } from './hydrometer.ts'
import { show } from './show.ts'

type Of<F extends (...given: never[]) => Outcome<unknown>> =
  ReturnType<F> extends Outcome<infer V> ? V : never

/** What was read of a soil, or what to put to it. */
export type SoilFound =
  | { readonly what: 'jar'; readonly found: JarReading }
  | { readonly what: 'wet-sieve'; readonly found: Of<typeof readWetSieve> }
  | { readonly what: 'hydrometer'; readonly found: HydrometerFound }
  | { readonly what: 'amend'; readonly found: Amendment }
  | { readonly what: 'shrinkage'; readonly found: Shrinkage }
  | { readonly what: 'lime'; readonly found: Of<typeof limeOnSoil> }

export type HydrometerFound = Extract<ReturnType<typeof workHydrometer>, { ok: true }>['value']

/** Clay, silt and sand of a subsoil, and what makes a mortar of it: sand, a fatter soil, lime. */
export const subsoil: Calculation<SoilFound> = {
  name: 'subsoil',
  uses: ({ role }) => role === 'earth' || role === 'aggregate' || role === 'lime',
  sources: ['das-soil-mechanics', 'is-2720-20', 'iupac-atomic-weights'],
  vocabularies: ['measured-states'],
  fields: fieldsOf,
  work(given, data) {
    const what = given.choice('what', ASKED)
    const outcome = WORK[what](given, data)
    return outcome.ok ? { ok: true, value: { what, found: outcome.value } as SoilFound } : outcome
  },
  show,
}

const WORK: Readonly<Record<Asked, (given: Given, data: BenchData) => Outcome<unknown> | Refused>> = {
  jar(given) {
    const settled = JAR_LAYERS.map((layer) => [layer, given.amount(`settled-${layer}`)] as const)
    const blank = settled.filter(([, density]) => density === undefined)
    if (blank.length > 0 && blank.length < settled.length)
      return refuse(...blank.map(([layer]) => ({ field: `settled-${layer}`, code: 'required' })))
    return readJar({
      sandMm: given.need('sand-mm').typical,
      siltMm: given.need('silt-mm').typical,
      clayMm: given.need('clay-mm').typical,
      markMm: given.need('mark-mm').typical,
      ...(blank.length === 0 && {
        settled: Object.fromEntries(settled) as Record<(typeof JAR_LAYERS)[number], Range>,
      }),
    })
  },
  'wet-sieve': (given) =>
    readWetSieve({
      dryG: given.need('dry-g').typical,
      gravelG: given.need('gravel-g').typical,
      sandG: given.need('sand-g').typical,
      balanceG: given.need('balance-g').typical,
    }),
  hydrometer: workHydrometer,
  amend(given) {
    const outcome = amendSoil({
      clayPercent: given.need('clay'),
      additionClayPercent: given.need('addition-clay'),
      targetClayPercent: given.need('target').typical,
      soilDensityKgM3: given.need('soil-density'),
      additionDensityKgM3: given.need('addition-density'),
    })
    if (outcome.ok) return outcome
    return refuse(
      ...outcome.faults.map((fault) =>
        fault.code === 'inconsistent' ? { ...fault, code: 'out-of-reach' } : fault,
      ),
    )
  },
  shrinkage(given) {
    const additions = numbersOf(given, 'additions')
    const gaps = numbersOf(given, 'gaps')
    const twice = additions.find((addition, i) => additions.indexOf(addition) !== i)
    if (twice !== undefined) return refuse({ field: 'additions', code: 'repeated', value: twice })
    if (gaps.length !== additions.length)
      return refuse({
        field: 'gaps',
        code: gaps.length < additions.length ? 'too-short' : 'too-long',
        value: gaps.length,
        limit: additions.length,
      })
    const bars = additions
      .map((additionPerSoil, i) => ({ additionPerSoil, gapMm: gaps[i] as number }))
      .sort((a, b) => a.additionPerSoil - b.additionPerSoil)
    return faultsAt(
      readShrinkage({
        boxMm: given.need('box-mm').typical,
        markMm: given.need('gap-off-mm').typical,
        allowedPercent: given.amount('allowed')?.typical,
        bars,
      }),
      [
        [/^bars.*gapMm$/, 'gaps'],
        [/^bars.*$/, 'additions'],
      ],
    )
  },
  lime(given, data) {
    const lime = data.materials[given.choice('lime', Object.keys(data.materials))]
    return faultsAt(
      limeOnSoil({
        soilL: given.need('soil-l'),
        soilDensityKgM3: given.need('soil-density'),
        percent: given.need('dose'),
        by: given.choice('by', MEASURES),
        state: given.choice('state', LIME_STATES),
        lime: propertiesOf('lime', lime, LIME_FIGURES, given),
        fibreKgM3: given.amount('fibre'),
        fibreDensityKgM3: given.amount('fibre-density'),
      }),
      [[/^lime\./, 'materials.lime.']],
    )
  },
}

const numbersOf = (given: Given, name: string): number[] => given.list(name).map((value) => value ?? 0)
