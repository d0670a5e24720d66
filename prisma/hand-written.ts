/**
 * Database objects that schema.prisma cannot say and a migration creates by hand: the one list of them. The
 * drift check leaves them out, and a test holds the list against the database in both directions.
 */
export const HAND_WRITTEN = {
  functions: ['hold_entry', 'hold_revision', 'refuse_rewriting_history'],
  triggers: [
    'decision_hold',
    'decision_keep_all',
    'entry_hold',
    'entry_keep',
    'entry_keep_all',
    'revision_hold',
    'revision_keep',
    'revision_keep_all',
  ],
  checks: ['Citation_one_target', 'Decision_sane', 'Revision_sane'],
  /** Names of indexes, and `table.column`s, that the comparison would want dropped: text-search columns, indexes
   * of expressions. None yet. */
  inSchemaTables: [] as readonly string[],
  /** `table.column` → collation. */
  collations: {
    'CaseIndex.slug': 'C',
    'Entry.slug': 'C',
    'RecipeIndex.slug': 'C',
    'RecipeIndex.sortTitle': 'C',
    'VisitIndex.slug': 'C',
  },
} as const
