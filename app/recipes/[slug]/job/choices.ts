import { LIME_STATES } from '#lib/entry/terms.ts'
import type { FieldFault } from '#lib/errors.ts'
import { WORK_KINDS } from '#lib/mortar/takeoff.ts'
import type { Typed } from '../../../_http/form.ts'
import { SYSTEMS } from '../../../_ui/systems.ts'
import { fieldOfWork, SANDS } from './fields.ts'

/** The fields that choose from a list; the address may hold anything. */
const CHOICES = { use: WORK_KINDS, lime: LIME_STATES, sand: SANDS, units: SYSTEMS, in: SYSTEMS } as const
export type Choice = keyof typeof CHOICES

/** The choice that a field is; that of a further work has its number behind it. */
export const choiceOf = (name: string): Choice | undefined => {
  const own = name.replace(/^use-\d+$/, 'use')
  return Object.hasOwn(CHOICES, own) ? (own as Choice) : undefined
}

/** A choice that is not offered is never taken for another. */
export function unknownChoices(typed: Typed, works: number): FieldFault[] {
  const further = Array.from(
    { length: works - 1 },
    (_, k) => [fieldOfWork('use', k + 2), WORK_KINDS] as const,
  )
  return [...Object.entries(CHOICES), ...further].flatMap(([field, list]) => {
    const value = typed[field]
    return value === undefined || pick<string>(list, value) ? [] : [{ field, code: 'unknown', value }]
  })
}

/** The item of a list that a text names. */
export const pick = <T extends string>(list: readonly T[], value: string | undefined): T | undefined =>
  list.find((one) => one === value)
