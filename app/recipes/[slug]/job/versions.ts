import { content } from '#lib/content/index.ts'
import type { JobSheet } from '#lib/mortar/job-types.ts'
import { SUMS_VERSION } from '#lib/mortar/version.ts'
import type { Typed } from '../../../_http/form.ts'
import type { FigureVersions } from '../../../_ui/changes-since.ts'
import { digestOf, shorterDigestsOf } from './figures.ts'

/** What a sheet's figures follow from beside its inputs, and their digest. */
export interface Versions extends FigureVersions {
  readonly revision: number
}

/** The versions that a sheet worked now has. */
export const versionsNow = (sheet: JobSheet, revision: number): Versions => ({
  revision,
  edition: content().edition,
  sums: SUMS_VERSION,
  digest: digestOf(sheet),
  shorter: shorterDigestsOf(sheet),
})

/** Names that act once and are no part of an address that is kept. */
const ACTS = ['show', 'in']

/** How the address names them. */
const VERSION_NAMES = { revision: 'r', edition: 'ed', sums: 'sums', digest: 'is' } as const

/** Does the address say what it was made from? */
export const isComplete = (typed: Typed): boolean =>
  Object.values(VERSION_NAMES).every((name) => typed[name] !== undefined)

/** The address of a sheet: every input as typed, then the versions. */
export function addressOf(path: string, typed: Typed, versions: Versions): string {
  const query = new URLSearchParams()
  const names: readonly string[] = Object.values(VERSION_NAMES)
  for (const [name, value] of Object.entries(typed))
    if (!names.includes(name) && !ACTS.includes(name)) query.set(name, value)
  for (const [part, name] of Object.entries(VERSION_NAMES))
    query.set(name, String(versions[part as keyof typeof VERSION_NAMES]))
  return `${path}?${query}`
}
