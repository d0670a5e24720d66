import type { Typed } from '../_http/form.ts'

/** Units that a page asks and answers in. */
export const SYSTEMS = ['metric', 'us'] as const
export type System = (typeof SYSTEMS)[number]

/** The system that a form asks to change to (`in`), if it is another than it is written in (`units`). */
export function askedSystem({ in: wanted, units }: Typed): System | undefined {
  const to = SYSTEMS.find((one) => one === wanted)
  return to === (units ?? 'metric') ? undefined : to
}
