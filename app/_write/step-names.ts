import { markName, readAmount } from '../_http/form.ts'
import { itemsOfPart, picksShown } from './form-parts.tsx'
import type { Part } from './layouts/parts.ts'
import { lookOf } from './look.ts'
import type { FormView } from './view.ts'

/** Names of all fields that a step shows, so that one left blank is known from one that was not there. */
export function namesOf(
  view: FormView,
  parts: readonly Part[],
  more: string | undefined,
  within = '',
): string[] {
  return parts.flatMap((part): string[] => {
    if (typeof part !== 'string') {
      const list = `${within}${part.list}`
      return itemsOfPart(view, part, list, more === list).flatMap((index) =>
        namesOf(view, part.parts, more, `${list}.${index}.`),
      )
    }
    const name = `${within}${part}`
    const look = lookOf(view.tree, name)
    if (look.as === 'picks') return picksShown(view, name, more === name).map((index) => `${name}.${index}`)
    const asked = (look.as === 'figure' || look.as === 'range') && readAmount(view.typed, name).readings
    return asked ? [name, markName(name)] : [name]
  })
}
