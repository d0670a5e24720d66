import type { CitationModel } from '../../../prisma/generated/models.ts'

type Target = Omit<CitationModel, 'entryId' | 'position' | 'revision'>
const NOTHING: Target = { source: null, locator: null, row: null, recipeEntryId: null, recipeRevision: null }

/** What an entry cites, numbered in the order given; each target names one thing. */
export const citationRows = (
  entryId: string,
  revision: number,
  targets: readonly Partial<Target>[],
): CitationModel[] =>
  targets.map((target, position) => ({ entryId, position, revision, ...NOTHING, ...target }))
