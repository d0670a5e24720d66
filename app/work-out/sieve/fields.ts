import type { Typed } from '../../_http/form.ts'
import { type AmountAsked, chosenIn, type FieldAsked } from '../../_ui/workshop/asked.ts'
import type { BenchData } from '../../_ui/workshop/brought.ts'
import { words } from '../../_words/index.ts'
import { ASKED, type Asked, balance, HELD, stackChoice, weighings } from './choices.ts'
import { blendFields } from './fields-blend.ts'
import { EXAMPLES, type NamedStack, openingsOf, STACKS, type Stack, sieveName } from './stacks.ts'

/** A stack of one's own has at most as many sieves as the sums take. */
const MOST_SIEVES = 30

/** The question, then the fields that it needs. */
export function fieldsOf(typed: Typed, data: BenchData): FieldAsked[] {
  const t = words('workOut')
  const what = chosenIn<Asked>(typed, 'what', ASKED, 'grade')
  const question: FieldAsked = {
    kind: 'choice',
    name: 'what',
    label: t('sieve.what'),
    options: ASKED.map((value) => ({ value, label: t(`sieve.asked.${value}`) })),
    first: 'grade',
    leads: true,
  }
  return [question, ...FIELDS[what](typed, data)]
}

const FIELDS: Readonly<Record<Asked, (typed: Typed, data: BenchData) => FieldAsked[]>> = {
  grade: (typed) => {
    const t = words('workOut')
    const stack = chosenIn<Stack>(typed, 'stack', STACKS, 'en')
    return [
      stackChoice(STACKS),
      {
        kind: 'choice',
        name: 'limits',
        label: t('sieve.fields.limits'),
        options: HELD.map((value) => ({ value, label: t(`sieve.gradings.${value}`) })),
        first: 'astm-c144-natural',
      },
      { ...grams('start', stack === 'astm' ? 500 : 501), path: 'startG', optional: true },
      { ...grams('washed'), path: 'washedOutG', optional: true },
      ...(stack === 'own' ? ownStack() : namedStack(stack)),
      { ...grams('pan', stack === 'own' ? 6 : EXAMPLES[stack][0]?.at(-1)), path: 'panG' },
      balance(),
    ]
  },
  blend: blendFields,
  modulus: () => {
    const t = words('workOut')
    const modulus = (name: 'fine' | 'coarse' | 'wanted', example: number): AmountAsked => ({
      kind: 'amount',
      name,
      label: t(`sieve.fields.${name}`),
      unit: '1',
      single: true,
      example,
      limits: { min: 0, max: 10 },
    })
    return [modulus('fine', 1.6), modulus('coarse', 3.2), modulus('wanted', 2.3)]
  },
}

const grams = (name: 'pan' | 'washed' | 'start', example?: number): AmountAsked => ({
  kind: 'amount',
  name,
  label: words('workOut')(`sieve.fields.${name}`),
  hint: words('workOut')(`sieve.hints.${name}`),
  group: weighings(),
  unit: 'g',
  bench: true,
  single: true,
  limits: { min: 0, max: 1e6 },
  ...(example !== undefined && { example }),
})

const namedStack = (stack: NamedStack): AmountAsked[] =>
  openingsOf(stack).map((mm, i) => ({
    kind: 'amount',
    name: `on-${mm}`,
    path: `sieves.${i}.retainedG`,
    label: words('workOut')('sieve.fields.on', { sieve: sieveName(mm, stack) }),
    group: weighings(),
    unit: 'g',
    bench: true,
    single: true,
    limits: { min: 0, max: 1e6 },
    example: EXAMPLES[stack][0]?.[i] ?? 0,
  }))

function ownStack(): FieldAsked[] {
  const t = words('workOut')
  return [
    {
      kind: 'list',
      name: 'openings',
      label: t('sieve.fields.openings'),
      hint: t('sieve.hints.openings'),
      group: weighings(),
      unit: 'mm',
      bench: true,
      example: [5, 2.5, 1.25, 0.63, 0.315, 0.16],
      most: MOST_SIEVES,
      limits: { above: 0, max: 200 },
    },
    {
      kind: 'list',
      name: 'masses',
      label: t('sieve.fields.masses'),
      hint: t('sieve.hints.masses'),
      group: weighings(),
      unit: 'g',
      bench: true,
      example: [6, 46, 98, 150, 140, 54],
      most: MOST_SIEVES,
      limits: { min: 0, max: 1e6 },
    },
  ]
}
