/**
 * Database objects that schema.prisma cannot say and a migration creates by hand: the one list of them. The
 * drift check leaves them out, and a test holds the list against the database in both directions.
 */
export const HAND_WRITTEN = {
  functions: [
    'hold_entry',
    'hold_kept_sheet',
    'hold_photo',
    'hold_revision',
    'refuse_rewriting_history',
    'with_words_struck',
  ],
  triggers: [
    'audit_hold',
    'audit_keep_all',
    'decision_hold',
    'decision_keep_all',
    'entry_hold',
    'entry_keep',
    'entry_keep_all',
    'kept_sheet_hold',
    'photo_hold',
    'photo_keep_all',
    'revision_hold',
    'revision_keep',
    'revision_keep_all',
  ],
  checks: [
    'Account_sane',
    'Citation_one_target',
    'Decision_sane',
    'KeptSheet_sane',
    'Photo_sane',
    'Revision_sane',
    'Upload_sane',
  ],
  /** Names of indexes, and `table.column`s, that the comparison would want dropped: text-search columns, indexes
   * of expressions or of some rows only. */
  inSchemaTables: [
    'Revision_photos',
    'CaseIndex_disputed',
    'KeptSheet_recipe',
    'VisitIndex_others',
    'revision_waiting',
  ] as readonly string[],
  /** `table.column` → collation. */
  collations: {
    'CaseIndex.slug': 'C',
    'Entry.slug': 'C',
    'LibraryIndex.slug': 'C',
    'LibraryIndex.sortTitle': 'C',
    'RecipeIndex.slug': 'C',
    'RecipeIndex.sortTitle': 'C',
    'SearchDocument.folded': 'C',
    'SearchDocument.slug': 'C',
    'SearchPosting.lexeme': 'C',
    'SearchWord.word': 'C',
    'VisitIndex.slug': 'C',
  },
} as const
