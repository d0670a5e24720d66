/**
 * Finding: one search over the record and content, facets with their counts, walls like yours, cases by region.
 * The record's facets lie in columns in memory, kept current by the number of the last change; its words are found
 * through postings in the database; content is indexed in memory. All is told by one ranking.
 */
export {
  caseFilterOf,
  caseFilterQuery,
  FACET_VOCABULARIES,
  type Params,
  unknownFault,
} from './case-query.ts'
export { YEAR_STEPS } from './count.ts'
export type { Counted } from './count-values.ts'
export { type Dropped, dropping, droppingWords } from './dropping.ts'
export { everyCase, everyPage } from './every.ts'
export type { Piece, Why } from './explain.ts'
export {
  type Facets,
  type Found,
  type FoundAll,
  type FoundCase,
  findAll,
  findCases,
  type ReadText,
} from './find.ts'
export {
  everyLike,
  type LikeCase,
  type LikeFound,
  type Likeness,
  type LikeOptions,
  likeCases,
  wallOfCase,
} from './like.ts'
export { type LikePart, type WallAsked, WEIGHTS } from './likeness.ts'
export type { FoundPage } from './page-facts.ts'
export { LONGEST_TEXT } from './read-text.ts'
export { type RegionCount, regionCounts } from './regions.ts'
export { type Asked, SORTS, type Sort } from './sought.ts'
export { type Suggestion, suggest } from './suggest.ts'
export { wallAskedOf, wallAskedQuery } from './wall-query.ts'
export type { Field, How } from './ways.ts'
