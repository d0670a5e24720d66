import type { LimeState } from '#lib/mortar/lime.ts'
import type { Properties } from '#lib/mortar/material.ts'
import type { Range } from '#lib/mortar/range.ts'

/** A material as the pages know it; only figures, label and role travel to the browser. */
export interface BenchMaterial {
  readonly label: string
  readonly role: string
  readonly properties: Properties
}

/** A proportion that the site holds, to be found near what was worked out: aggregate by volume to one of lime. */
export interface HeldRatio {
  readonly id: string
  readonly label: string
  readonly href: string
  readonly state: LimeState
  readonly aggregatePerLime: Range
  readonly invented?: boolean
}

/** What a page brings along for its sums beside what is typed. */
export interface BenchData {
  readonly materials: Readonly<Record<string, BenchMaterial>>
  /** Short citations of the sources that can show, by id. */
  readonly cites: Readonly<Record<string, string>>
  /** Labels of the vocabularies that the calculation names, by vocabulary and id. */
  readonly terms: Readonly<Record<string, Readonly<Record<string, string>>>>
  /** What the site holds today, where a page shows what lies near its result. */
  readonly held?: readonly HeldRatio[]
}

/** A term's label as the page brought it along. */
export const termLabel = (data: BenchData, vocabulary: string, id: string): string =>
  data.terms[vocabulary]?.[id] ?? id
