import { WORK_KINDS, type WorkKind } from '#lib/mortar/takeoff.ts'
import { markName, type Typed } from '../../../_http/form.ts'
import { dimensionFields, fieldOfWork } from './fields.ts'

/** Names of all fields that a work may have. */
const OWN_NAMES: ReadonlySet<string> = new Set([
  'use',
  'loss',
  ...WORK_KINDS.flatMap((kind) => dimensionFields(kind, 1).map(({ name }) => name)),
])

/** The works of a form as they stand once the button that was pressed has done its part. */
export interface Arranged {
  /** What was typed, under the numbers that the works have now. */
  readonly typed: Typed
  readonly count: number
  /** The work that was just added. */
  readonly added: number | undefined
}

/**
 * Reads how many works there are and adds or takes out the one that `show` asks for (`more`, `drop-2`). Those behind
 * one that was taken out move up, with all that was typed for them.
 *
 * @param next what kind a work that is added has at first
 */
export function arrangeWorks(
  typed: Typed,
  most: number,
  next: (there: readonly string[]) => WorkKind,
): Arranged {
  const further = Object.keys(typed).flatMap((name) => /^use-([2-9]|[1-9]\d)$/.exec(name)?.[1] ?? [])
  const numbers = [1, ...further.map(Number).sort((a, b) => a - b)]
  const dropped = Number(/^drop-(\d+)$/.exec(typed.show ?? '')?.[1])
  const kept = numbers.length > 1 ? numbers.filter((number) => number !== dropped) : numbers
  const arranged: Record<string, string> = {}
  for (const [name, value] of Object.entries(typed)) {
    const own = ownName(name)
    const work = own ? kept.indexOf(own.work) + 1 : 0
    if (!own) arranged[name] = value
    else if (work > 0) {
      const field = fieldOfWork(own.name, work)
      arranged[own.mark ? markName(field) : field] = value
    }
  }
  if (typed.show !== 'more' || kept.length >= most)
    return { typed: arranged, count: kept.length, added: undefined }
  const added = kept.length + 1
  const there = kept.flatMap((_, k) => arranged[fieldOfWork('use', k + 1)] ?? [])
  arranged[fieldOfWork('use', added)] = next(there)
  return { typed: arranged, count: added, added }
}

const MARK = markName('')

/** The field of a work that a name in the address is, or is the mark of. */
function ownName(name: string): { name: string; work: number; mark: boolean } | undefined {
  const mark = name.endsWith(MARK)
  const field = mark ? name.slice(0, -MARK.length) : name
  if (OWN_NAMES.has(field)) return { name: field, work: 1, mark }
  const [, own = '', number = ''] = /^(.+)-(\d+)$/.exec(field) ?? []
  return OWN_NAMES.has(own) ? { name: own, work: Number(number), mark } : undefined
}
