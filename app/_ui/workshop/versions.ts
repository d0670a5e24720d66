import type { Typed } from '../../_http/form.ts'
import type { FigureVersions } from '../changes-since.ts'
import { digestOf } from './figures.ts'
import type { Block } from './shown.ts'

/** What figures follow from beside the inputs. */
export type Editions = Omit<FigureVersions, 'digest'>

export const versionsOf = (editions: Editions, blocks: readonly Block[]): FigureVersions => ({
  ...editions,
  digest: digestOf(blocks),
})

/** Does the address say what it was made from? */
export const isComplete = ({ ed, sums, is }: Typed): boolean =>
  ed !== undefined && sums !== undefined && is !== undefined

/** Names of the address that are no input: they are written anew, or act once. */
const NO_INPUT = ['ed', 'sums', 'is', 'show', 'in']

/** The address of a result: every input as typed, then the versions. */
export function addressOf(path: string, typed: Typed, { edition, sums, digest }: FigureVersions): string {
  const query = new URLSearchParams()
  for (const [name, value] of Object.entries(typed)) if (!NO_INPUT.includes(name)) query.set(name, value)
  query.set('ed', edition)
  query.set('sums', String(sums))
  query.set('is', digest)
  return `${path}?${query}`
}
