import type { Typed } from '../../_http/form.ts'
import { chosenIn, type FieldAsked, usualOf } from '../../_ui/workshop/asked.ts'
import type { BenchData } from '../../_ui/workshop/brought.ts'
import { words } from '../../_words/index.ts'
import { balance, COUNTS, stackChoice, TARGETS } from './choices.ts'
import { EXAMPLES, NAMED_STACKS, type NamedStack, openingsOf } from './stacks.ts'

/** The stack, how many sands, the target, then a row of masses for each sand. */
export function blendFields(typed: Typed, data: BenchData): FieldAsked[] {
  const t = words('workOut')
  const stack = chosenIn<NamedStack>(typed, 'stack', NAMED_STACKS, 'en')
  const sands = Number(chosenIn(typed, 'sands', COUNTS, '2'))
  const target = chosenIn(typed, 'target', TARGETS, 'astm-c144-natural')
  return [
    stackChoice(NAMED_STACKS),
    {
      kind: 'choice',
      name: 'sands',
      label: t('sieve.fields.sands'),
      options: COUNTS.map((value) => ({ value, label: value })),
      first: '2',
      leads: true,
    },
    {
      kind: 'choice',
      name: 'target',
      label: t('sieve.fields.target'),
      options: TARGETS.map((value) => ({ value, label: t(`sieve.targets.${value}`) })),
      first: 'astm-c144-natural',
      leads: true,
    },
    ...(target === 'own' ? [ownTarget(stack)] : []),
    ...Array.from({ length: sands }, (_, s) => sandFields(s, stack, data)).flat(),
    balance(),
  ]
}

const ownTarget = (stack: NamedStack): FieldAsked => ({
  kind: 'list',
  name: 'passing',
  path: 'target',
  label: words('workOut')('sieve.fields.passing'),
  hint: words('workOut')('sieve.hints.passing', { sieves: sievesOf(stack) }),
  unit: '%',
  example: stack === 'en' ? [100, 99, 92, 75, 48, 20, 6, 2] : [100, 97, 84, 55, 22, 8, 2],
  gaps: true,
  most: openingsOf(stack).length,
  limits: { min: 0, max: 100 },
})

/** One sand of a blend: what stayed on each sieve, and its loose density for parts by volume. */
function sandFields(s: number, stack: NamedStack, data: BenchData): FieldAsked[] {
  const t = words('workOut')
  const number = String(s + 1)
  const group = t('sieve.sandNumber', { number })
  return [
    {
      kind: 'list',
      name: `sand-${number}`,
      path: `sands.${s}.curve`,
      label: t('sieve.fields.sand', { number }),
      hint: t('sieve.hints.sand', { sieves: sievesOf(stack) }),
      group,
      unit: 'g',
      bench: true,
      example: EXAMPLES[stack][s + 1] ?? EXAMPLES[stack][0] ?? [],
      most: openingsOf(stack).length + 1,
      limits: { min: 0, max: 1e6 },
    },
    {
      kind: 'amount',
      name: `density-${number}`,
      path: `sands.${s}.bulkDensityKgM3`,
      label: t('sieve.fields.density', { number }),
      hint: t('sieve.hints.density'),
      group,
      unit: 'kg/m3',
      usual: usualOf(data.materials['sand-sharp'], 'bulkDensity'),
      limits: { above: 0, max: 5000 },
    },
  ]
}

const sievesOf = (stack: NamedStack): string => openingsOf(stack).join(', ')
