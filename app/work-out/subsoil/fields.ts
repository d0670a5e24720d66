import type { Typed } from '../../_http/form.ts'
import type { AmountAsked, FieldAsked, ListAsked, Usual } from '../../_ui/workshop/asked.ts'
import { chosenIn, practice } from '../../_ui/workshop/asked.ts'
import type { BenchData } from '../../_ui/workshop/brought.ts'
import { words } from '../../_words/index.ts'
import { amendFields, limeFields } from './fields-mix.ts'
import { figure, type Label } from './figure.ts'

/** What is wanted, and from which measurement. */
export const ASKED = ['jar', 'wet-sieve', 'hydrometer', 'amend', 'shrinkage', 'lime'] as const
export type Asked = (typeof ASKED)[number]
export const JAR_LAYERS = ['sand', 'silt', 'clay'] as const

/** The question, then the fields that it needs. */
export function fieldsOf(typed: Typed, data: BenchData): FieldAsked[] {
  const t = words('workOut')
  const question: FieldAsked = {
    kind: 'choice',
    name: 'what',
    label: t('subsoil.what'),
    options: ASKED.map((value) => ({ value, label: t(`subsoil.asked.${value}`) })),
    first: 'jar',
    leads: true,
  }
  return [question, ...FIELDS[chosenIn<Asked>(typed, 'what', ASKED, 'jar')](typed, data)]
}

const FIELDS: Readonly<Record<Asked, (typed: Typed, data: BenchData) => FieldAsked[]>> = {
  jar: () => [
    { ...length('sand-mm'), path: 'sandMm', example: 60 },
    { ...length('silt-mm'), path: 'siltMm', example: 25 },
    { ...length('clay-mm'), path: 'clayMm', example: 15 },
    { ...length('mark-mm'), path: 'markMm', usual: one(2) },
    ...JAR_LAYERS.map(
      (layer): AmountAsked => ({
        kind: 'amount',
        name: `settled-${layer}`,
        path: `settled.${layer}`,
        label: words('workOut')(`subsoil.settled.${layer}`),
        group: words('workOut')('subsoil.settledGroup'),
        unit: 'kg/m3',
        optional: true,
        limits: { above: 0, max: 3000 },
      }),
    ),
  ],
  'wet-sieve': () => [
    { ...grams('dry-g'), path: 'dryG', example: 500 },
    { ...grams('gravel-g'), path: 'gravelG', example: 35 },
    { ...grams('sand-g'), path: 'sandG', example: 255 },
    { ...grams('balance-g'), path: 'balanceG', usual: one(0.1) },
  ],
  hydrometer: () => [
    { ...grams('mass-g'), path: 'massG', example: 50, limits: { above: 0, max: 200 } },
    { ...figure('fines', '%'), path: 'finesPercent', example: 42, limits: { min: 0, max: 100 } },
    { kind: 'check', name: 'fines-only', label: words('workOut')('subsoil.fields.fines-only') },
    { ...figure('grains', 'kg/m3'), path: 'particleDensityKgM3', usual: practice(2600, 2650, 2750) },
    { ...figure('blank', 'g/L'), path: 'blankGL', example: [1.5, 2.5] },
    { ...figure('meniscus', 'g/L'), path: 'meniscusGL', single: true, usual: one(1) },
    { ...figure('reading-off', 'g/L'), path: 'readingErrorGL', single: true, usual: one(0.5) },
    list('minutes', 'min', [1, 2, 5, 15, 30, 60, 250, 1440], { above: 0, max: 100_000 }),
    list('readings', 'g/L', [22, 20.5, 18.5, 16, 14.5, 13, 11, 9], { min: 0, max: 60 }),
    list(
      'temperatures',
      'C',
      Array.from({ length: 8 }, () => 20),
      { min: 5, max: 35 },
    ),
  ],
  amend: amendFields,
  shrinkage: () => [
    { ...length('box-mm'), path: 'boxMm', example: 600, limits: { above: 0, max: 5000 } },
    list('additions', '1', [0, 0.5, 1, 1.5, 2], { min: 0, max: 100 }),
    list('gaps', 'mm', [30, 19, 10, 6, 4], { min: 0, max: 2500 }),
    { ...length('gap-off-mm'), path: 'markMm', usual: one(0.5) },
    {
      ...figure('allowed', '%'),
      path: 'allowedPercent',
      single: true,
      optional: true,
      example: 1.5,
      limits: { min: 0, max: 100 },
    },
  ],
  lime: limeFields,
}

const length = (name: Label): AmountAsked => ({
  ...figure(name, 'mm'),
  single: true,
  limits: { min: 0, max: 2000 },
})

const grams = (name: Label): AmountAsked => ({
  ...figure(name, 'g'),
  bench: true,
  single: true,
  limits: { min: 0, max: 1e6 },
})

const list = (
  name: 'minutes' | 'readings' | 'temperatures' | 'additions' | 'gaps',
  unit: string,
  example: readonly number[],
  limits: ListAsked['limits'] & object,
): ListAsked => ({
  kind: 'list',
  name,
  label: words('workOut')(`subsoil.fields.${name}`),
  hint: words('workOut')(`subsoil.hints.${name}`),
  unit,
  example,
  limits,
  most: 20,
})

/** One figure of common practice. */
const one = (value: number): Usual => practice(value, value, value)
