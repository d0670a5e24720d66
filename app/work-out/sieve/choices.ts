import { type AmountAsked, type ChoiceAsked, practice } from '../../_ui/workshop/asked.ts'
import { words } from '../../_words/index.ts'
import type { Stack } from './stacks.ts'

/** What is wanted: one sand's grading, a blend of several, or a blend of two to a modulus. */
export const ASKED = ['grade', 'blend', 'modulus'] as const
export type Asked = (typeof ASKED)[number]

/** Gradings that a sand can be held against or blended to, as the sums call them. */
export const LIMITS = ['astm-c144-natural', 'astm-c144-manufactured', 'bs-1200-general'] as const
export const HELD = [...LIMITS, 'none'] as const
export const TARGETS = [...LIMITS, 'own'] as const
export const COUNTS = ['2', '3', '4'] as const

export const stackChoice = (stacks: readonly Stack[]): ChoiceAsked => {
  const t = words('workOut')
  return {
    kind: 'choice',
    name: 'stack',
    label: t('sieve.fields.stack'),
    options: stacks.map((value) => ({ value, label: t(`sieve.stacks.${value}`) })),
    first: 'en',
    leads: true,
  }
}

export const weighings = () => words('workOut')('sieve.weighings')

/** What a plain kitchen or bench balance shows. */
export const balance = (): AmountAsked => ({
  kind: 'amount',
  name: 'balance',
  path: 'balanceG',
  label: words('workOut')('sieve.fields.balance'),
  hint: words('workOut')('sieve.hints.balance'),
  group: weighings(),
  unit: 'g',
  bench: true,
  single: true,
  usual: practice(0.1, 0.1, 0.1),
  limits: { min: 0, max: 1e6 },
})
